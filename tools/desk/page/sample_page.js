// The sheet of one sample: its listing as a label on top, the next test, then a card a part in the order in which one
// opens the product, then costs, report and file.
import { get } from './ask.js';
import { CostSheet } from './cost_sheet.js';
import { button, element, freshId } from './element.js';
import { faultText } from './fault_text.js';
import { FileText } from './file_text.js';
import { fittingEdits } from './fitting_edits.js';
import { listingLabel } from './listing_label.js';
import { ListingText } from './listing_text.js';
import { counted, percent } from './numbers.js';
import { showOutsideChange } from './outside_change.js';
import { PartCard } from './part_card.js';
import { notRead } from './not_read.js';
import { noTestText, plannedTest } from './plan_view.js';
import { redrawn } from './redrawn.js';
import { reportCard } from './report_card.js';
import { Sample } from './sample.js';
import { factsLine, SampleFacts } from './sample_facts.js';
import { stateDifference } from './state_difference.js';
import { endTrouble, showTrouble, speak, tell } from './told.js';
import { countGrades, numberedVerdicts } from './verdicts.js';

const kQuiet = 1200;  // ms of rest before what typing changes is spoken

export class SamplePage {
    // know: {parts, harms, methods, categories, currencies, markets, today}; `keeping`: the place in the bar for undo and redo.
    constructor(name, know, keeping) {
        this.know_ = know;
        this.keeping_ = keeping;
        this.cards_ = new Map();
        this.sample_ = new Sample(name, { seen: () => this.draw_(), trouble: showTrouble, changedOutside: (now, isAsked) => this.changedOutside_(now, isAsked) });
        this.node = element('div', {}, element('h1', { tabindex: '-1' }, name));
    }

    get isTyping() { return this.sample_.isTyping || (this.file_?.isTyping ?? false); }

    async open() {
        try {
            this.sample_.saved = await get('/dossier', { name: this.sample_.name });
        } catch (failure) {
            this.sample_.saved = undefined;
            showTrouble(failure);
            return;
        }
        endTrouble();
        this.build_();
        this.draw_();
    }

    close() {
        this.keeping_.replaceChildren();
        this.sample_.drafts_.clear();
    }

    undo() { return this.step_('undo', 'Undone', 'There is nothing to undo.'); }
    redo() { return this.step_('redo', 'Done again', 'There is nothing to do again.'); }

    look() {
        if (this.sample_.saved) this.sample_.look();
    }

    async step_(which, done, nothing) {
        if (!this.sample_.saved) return;
        if (!this.sample_.saved[which]) tell(nothing);
        else {
            const before = this.sample_.saved;
            if (!await this.sample_.step(which)) return;
            const what = stateDifference(before, this.sample_.saved, (part) => this.partName_(part));
            tell(`${done}: ${what.join(', ') || 'the text of the file'}.`);
        }
    }

    build_() {
        const { sample_: sample, know_: know } = this;
        this.heading_ = element('h1', { tabindex: '-1' });
        this.outside_ = element('div');
        this.faultsPlace_ = element('div');
        const facts = element('div');
        const label = element('div');
        this.next_ = element('section', { class: 'card next', 'aria-label': 'The next test' });
        this.facts_ = new SampleFacts(sample, know);
        this.listing_ = new ListingText(sample, know);
        this.costs_ = new CostSheet(sample, know);
        this.file_ = new FileText(sample, () => this.drawKeeping_());
        this.places_ = element('nav', { class: 'places', 'aria-label': 'On this sheet' });
        this.cardPlace_ = element('div', { class: 'cards' });
        this.undo_ = button('Undo', () => this.undo(), { 'aria-keyshortcuts': 'Control+Z' });
        this.redo_ = button('Redo', () => this.redo(), { 'aria-keyshortcuts': 'Control+Y' });
        this.state_ = element('span', { class: 'state' });
        this.keeping_.replaceChildren(this.state_, this.undo_, this.redo_);
        this.drawFacts_ = redrawn(facts, (shown) => factsLine(shown));
        this.drawLabel_ = redrawn(label, (listing, verdicts, isRead) => [
            isRead ? listingLabel(listing, verdicts, (verdict) => this.openVerdict_(verdict)) : notRead('What the listing says'), countGrades(verdicts), isRead ? this.takeAllDeed_() : null]);
        this.drawNext_ = redrawn(this.next_, (test, isRead, hasListing) => this.drawFirstTest_(test, isRead, hasListing));
        this.drawPlaces_ = redrawn(this.places_, (places) => element('ul', {}, places.map(([id, name]) => element('li', {},
            element('a', { href: `#${id}`, 'data-keep': `place ${id}`, click: (event) => { event.preventDefault(); this.goTo_(id); } }, name)))));
        this.drawFaults_ = redrawn(this.faultsPlace_, (faults, warnings) => this.drawTold_(faults, warnings));
        const labelId = freshId('label');
        this.node.replaceChildren(this.heading_, facts, this.facts_.node, this.outside_, this.faultsPlace_,
            element('section', { class: 'tag', 'aria-labelledby': labelId }, element('h2', { id: labelId, tabindex: '-1' }, 'The listing'), label, this.listing_.node),
            this.places_, this.next_, this.cardPlace_, this.anotherPart_(), this.costs_.node, reportCard(sample.name), this.file_.node);
        this.labelId_ = labelId;
    }

    drawTold_(faults, warnings) {
        const list = (entries) => element('ul', {}, entries.map((fault) => element('li', {}, fault.line ? `Line ${fault.line}: ` : null, faultText(fault))));
        return [faults.length ? element('section', { class: 'notice', 'aria-label': 'Faults' }, element('h2', {}, 'The file has faults'),
                                        element('p', {}, 'Until they are mended, nothing follows from its readings. The file itself is at the end of this sheet.'), list(faults)) : null,
                warnings.length ? element('section', { class: 'notice mild', 'aria-label': 'Remarks' }, element('h2', {}, 'Remarks'), list(warnings)) : null];
    }

    drawFirstTest_(test, isRead, hasListing) {
        if (!isRead) return [element('h2', {}, 'The next test'), notRead('Which test would tell more')];
        if (!test) return [element('h2', {}, 'The next test'), element('p', { class: 'quiet' }, noTestText(hasListing))];
        return [element('h2', {}, 'The next test'),
                plannedTest({ ...test, next: false }, this.know_.harms, () => this.card_(test.part).record({ method: test.method }), `, ${this.partName_(test.part)}`)];
    }

    anotherPart_() {
        const id = freshId('another');
        const select = element('select', { id });
        this.others_ = select;
        const open = () => {
            if (!select.value) return;
            const part = select.value;
            this.extra_ = (this.extra_ ?? new Set()).add(part);
            this.draw_();
            this.card_(part).record();
        };
        return element('p', { class: 'deeds another' }, element('label', { for: id }, 'Another part'), select, button('Open its card', open));
    }

    partName_(part) { return this.know_.parts.get(part) ?? part; }

    card_(part) {
        let card = this.cards_.get(part);
        if (!card) {
            card = new PartCard(this.sample_, part, this.know_, { take: (verdict) => this.take_(verdict), show: (verdict) => this.showWords_(verdict) });
            this.cards_.set(part, card);
        }
        return card;
    }

    draw_() {
        const { saved, shown } = this.sample_;
        if (!saved || !this.heading_) return;
        if (!this.sample_.isChangedOutside) this.outside_.replaceChildren();
        this.heading_.textContent = saved.sample?.what || saved.name;
        document.title = `${this.heading_.textContent} - Grainside desk`;
        this.verdictsShown_ = numberedVerdicts(shown, saved);
        this.drawFacts_({ sample: shown.sample ?? {} });
        const isRead = shown.plan !== undefined;
        this.drawLabel_(shown.listing, this.verdictsShown_, isRead);
        this.listing_.show(shown, saved, this.verdictsShown_);
        this.drawFaults_(saved.faults ?? [], saved.warnings ?? []);
        const plan = shown.plan ?? [];
        this.drawNext_(plan.find(({ next }) => next), isRead, shown.listing?.fields !== undefined);
        this.drawCards_(shown, saved, plan);
        this.costs_.show(shown, saved, this.sample_.tried !== undefined);
        this.file_.show(saved);
        this.drawPlaces_([[this.labelId_, 'Listing'], ...this.partsShown_.map((part) => [this.cards_.get(part).head.id, this.partName_(part)]),
                          ['costs', 'Costs'], ['report', 'Report']]);
        this.drawKeeping_();
        this.tellEffect_();
    }

    drawCards_(shown, saved, plan) {
        const recorded = new Map((shown.parts ?? []).map((part) => [part.part, part]));
        const onDisk = new Map((saved.parts ?? []).map((part) => [part.part, part]));
        const isShown = (part) => recorded.has(part) || this.extra_?.has(part) || this.cards_.get(part)?.isTyping || this.verdictsShown_.some((verdict) => verdict.part === part);
        const known = [...this.know_.parts.keys()];
        const parts = [...known, ...[...recorded.keys()].filter((part) => !known.includes(part))].filter(isShown);
        let last = null;
        for (const part of parts) {
            const card = this.card_(part);
            card.show(this.verdictsShown_.filter((verdict) => verdict.part === part),
                      { readings: saved.sample ? onDisk.get(part)?.readings ?? [] : undefined, beliefs: recorded.get(part)?.beliefs ?? [], isRead: shown.plan !== undefined,
                        tests: recorded.get(part)?.readings.length ?? 0, hasListing: shown.listing?.fields !== undefined, plan: plan.filter((test) => test.part === part) },
                      this.sample_.tried ? onDisk.get(part)?.beliefs ?? [] : undefined);
            // A card that stands in its place is not moved: that would take the focus away.
            const wanted = last ? last.nextSibling : this.cardPlace_.firstChild;
            if (card.node !== wanted) this.cardPlace_.insertBefore(card.node, wanted);
            last = card.node;
        }
        for (const [part, card] of this.cards_) {
            if (!parts.includes(part)) card.node.remove();
        }
        this.partsShown_ = parts;
        const canTest = new Set([...this.know_.methods.values()].flatMap((method) => method.parts));
        const others = known.filter((part) => !parts.includes(part) && canTest.has(part));
        if (JSON.stringify(others) !== this.othersShown_) {
            this.othersShown_ = JSON.stringify(others);
            this.others_.replaceChildren(...others.map((part) => element('option', { value: part }, this.partName_(part))));
        }
    }

    drawKeeping_() {
        const { saved } = this.sample_;
        this.undo_.setAttribute('aria-disabled', String(!saved.undo));
        this.redo_.setAttribute('aria-disabled', String(!saved.redo));
        const text = this.outside_.firstChild ? 'Changed on disk' : this.isTyping ? 'Unsaved' : 'Saved';
        if (this.state_.textContent !== text) this.state_.textContent = text;
    }

    // What follows from what is typed, in a sentence: for those who do not see the figures move, and in the form, where
    // they may be out of sight.
    tellEffect_() {
        clearTimeout(this.speech_);
        const { tried } = this.sample_;
        const text = tried ? this.effect_(tried) : '';
        for (const card of [this.listing_, ...this.cards_.values()]) card.tellEffect(text);
        if (text) this.speech_ = setTimeout(() => speak(text), kQuiet);
    }

    effect_(tried) {
        const moved = this.verdictsShown_.filter(({ seen }) => seen.was);
        const text = moved.length === 0 ? 'With this, no verdict changes.'
            : `With this, ${counted(moved.length, 'verdict changes', 'verdicts change')}: ${moved.slice(0, 3).map(({ words, grade, seen }) => `\u201c${words}\u201d from ${seen.was} to ${grade}`).join('; ')}.`;
        const part = tried.parts?.find(({ part: one }) => this.cards_.get(one)?.isTyping);
        const first = part?.beliefs?.[0]?.candidates[0];
        return first ? `${text} Believed: ${first.name}, ${percent(first.probability)}.` : text;
    }

    goTo_(id) {
        const place = document.getElementById(id);
        place?.scrollIntoView();
        place?.focus({ preventScroll: true });
    }

    openVerdict_(verdict) {
        const details = document.getElementById(verdict.seen.id);
        if (!details) return;
        details.open = true;
        details.scrollIntoView({ block: 'nearest' });
        details.querySelector('summary').focus({ preventScroll: true });
    }

    showWords_(verdict) {
        const words = document.getElementById(`words-${verdict.seen.number}`);
        words?.scrollIntoView({ block: 'center' });
        words?.nextElementSibling?.focus({ preventScroll: true });
    }

    async take_(verdict) {
        const now = this.verdictsShown_.find(({ key }) => key === verdict.key) ?? verdict;
        const { at, wording } = now.edit;
        const text = this.sample_.shown.listing.fields.find(({ field }) => field === now.field).text;
        if (await this.sample_.save([{ do: 'take-wording', field: now.field, at, words: text.slice(at[0], at[1]), wording }])) tell('Written into the file. Undo takes it back.');
    }

    // Of those whose words stand in the dossier's own file, as they are on disk.
    fitting_() { return this.sample_.tried ? [] : fittingEdits(this.verdictsShown_.filter(({ canTake }) => canTake)); }

    takeAllDeed_() {
        const count = this.fitting_().length;
        return count < 2 ? null : element('p', { class: 'deeds' }, button(`Take every wording that fits: ${count}`, () => this.takeAll_(), { 'data-keep': 'take all' }));
    }

    // The last first, so that the places of the others stay what they are.
    async takeAll_() {
        const texts = new Map(this.sample_.shown.listing.fields.map(({ field, text }) => [field, text]));
        const edits = this.fitting_().reverse();
        const changes = edits.map(({ field, at, wording }) => ({ do: 'take-wording', field, at, words: texts.get(field).slice(at[0], at[1]), wording }));
        if (changes.length && await this.sample_.save(changes)) tell(`${counted(changes.length, 'wording is', 'wordings are')} written into the file. Undo takes all of it back.`);
    }

    changedOutside_(now, isAsked) {
        if (!now) {
            this.outside_.replaceChildren();
            tell('The file is again what is shown here.');
            this.drawKeeping_();
            return;
        }
        const isNews = !this.outside_.firstChild;
        const take = () => {
            this.sample_.takeNoticed();
            this.heading_.focus();
            tell('What is on disk is shown.');
        };
        showOutsideChange(this.outside_, this.sample_.saved, now, { isTyping: this.isTyping, isAsked, take });
        if (!isAsked) tell(isNews ? 'The file was changed outside of this page. What changed stands on top of this sheet.' : 'The file was changed outside of this page once more.');
        this.drawKeeping_();
    }
}
