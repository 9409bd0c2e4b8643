// Checking a draft: a text is pasted, dropped or typed, and marked as it is; what it claims gathers by part below.
import { post } from './ask.js';
import { ClaimsView } from './claims_view.js';
import { keepDraft, keptDraft } from './draft_store.js';
import { button, element } from './element.js';
import { keyed } from './finding_card.js';
import { asOneEdit, fittingEdits } from './fitting_edits.js';
import { ListingBox } from './listing_box.js';
import { newest } from './newest.js';
import { MarketChoice } from './market_choice.js';
import { counted, spoken } from './numbers.js';
import { endTrouble, showTrouble, speak, tell } from './told.js';

const kMostBytes = 1 << 20;  // of a file that is dropped: a listing is a page, not a book

export class WordsPage {
    // known: {markets, market, categories, parts, today}; keep(text, markets): makes a sample of it.
    constructor(known, keep) {
        this.known_ = known;
        this.findings_ = [];
        this.box_ = new ListingBox({
            label: 'The listing, as a shopper reads it',
            hint: 'Paste, drop or type it. Press marked words, or Alt and Enter at them, for what is said of them.',
            typed: (text) => this.typed_(text),
            ask: (mark) => this.view_.open(mark.key),
        });
        this.view_ = new ClaimsView({ take: (finding) => this.take_(finding), show: (finding) => this.show_(finding) });
        this.ask_ = newest((body, signal) => post('/words', body, signal),
                           (answer, { text }) => this.answered_(answer, text), (failure) => this.refused_(failure));
        this.sum_ = element('p', { class: 'sum' });
        this.takeAll_ = button('', () => this.takeAllNow_(), { hidden: true });
        const kept = keptDraft();
        this.markets_ = new MarketChoice(known.markets, kept?.markets ?? known.market, () => this.typed_(this.box_.text));
        this.category_ = this.choice_('Sort of goods', known.categories.map((category) => [category, spoken(category)]), 'As the text says');
        this.node = element('div', { class: 'words-page' }, element('h1', { tabindex: '-1' }, 'Check a draft'),
            element('div', { class: 'tag' }, this.box_.node,
                this.markets_.node, element('div', { class: 'choices' }, this.category_.node)),
            element('div', { class: 'deeds' }, this.filePicker_(), button('Copy the text', () => this.copy_()), button('Empty it', () => this.empty_()),
                    button('Keep it as a sample', () => keep(this.box_.text, this.markets_.value))),
            this.sum_, element('p', { class: 'deeds' }, this.takeAll_), this.view_.node);
        this.node.addEventListener('dragover', (event) => event.preventDefault());
        this.node.addEventListener('drop', (event) => this.dropped_(event));
        this.sum_.textContent = 'Nothing is written yet.';
        if (kept?.text) {
            this.category_.value = kept.category;
            this.box_.fill(kept.text);
        }
        // Kept as the page goes, not with each key.
        window.addEventListener('pagehide', () => this.keepDraft_());
    }

    keepDraft_() { keepDraft({ text: this.box_.text, markets: this.markets_.value, category: this.category_.value }); }

    choice_(label, options, none) {
        const select = element('select', { change: () => this.typed_(this.box_.text) }, element('option', { value: '' }, none),
                               options.map(([value, name]) => element('option', { value }, name)));
        return { node: element('label', { class: 'choice' }, `${label} `, select), get value() { return select.value; }, set value(value) { select.value = value; } };
    }

    filePicker_() {
        const input = element('input', { type: 'file', accept: '.txt,.md,text/plain', hidden: true,
                                         change: () => { this.read_(input.files[0]); input.value = ''; } });
        return [input, button('Open a text file', () => input.click())];
    }

    empty_() {
        this.box_.write([0, this.box_.text.length], '');
        tell('Emptied. Ctrl and Z in the text brings it back.');
    }

    async read_(file) {
        if (!file) return;
        if (file.size > kMostBytes) {
            showTrouble({ message: `${file.name} is longer than a listing (${counted(Math.round(file.size / 1024), 'kB', 'kB')}).`,
                          hint: 'Paste the one listing out of it.' });
            return;
        }
        this.box_.fill((await file.text()).replaceAll('\r\n', '\n'));
        tell(`${file.name} is read.`);
    }

    dropped_(event) {
        const file = event.dataTransfer.files[0];
        const text = event.dataTransfer.getData('text/plain');
        if (!file && (!text || event.target === this.box_.field)) return;
        event.preventDefault();
        if (file) this.read_(file);
        else this.box_.fill(text);
    }

    typed_(text) {
        const body = { text, market: this.markets_.value };
        if (this.category_.value) body.category = this.category_.value;
        this.ask_(body);
    }

    answered_({ findings, claims, summary }, text) {
        endTrouble();
        this.findings_ = keyed(findings);
        this.answeredText_ = text;
        this.box_.mark(text, this.findings_);
        // The marks come first; the cards follow when they are on the screen.
        clearTimeout(this.later_);
        this.later_ = setTimeout(() => {
            this.view_.show(claims, this.findings_, this.known_.parts);
            this.sum_.textContent = text.trim() === '' ? 'Nothing is written yet.'
                : `${counted(summary.claims, 'claim')}, ${counted(summary.findings, 'finding')}${summary.worst ? `, the worst ${summary.worst}` : ''}.`;
            const count = fittingEdits(this.findings_).length;
            this.takeAll_.textContent = `Take every wording that fits: ${count}`;
            this.takeAll_.hidden = count === 0;
            this.rested_();
        });
    }

    // A screen reader hears the sum when typing rests, not after each key.
    rested_() {
        clearTimeout(this.rest_);
        this.rest_ = setTimeout(() => {
            speak(this.sum_.textContent);
            this.keepDraft_();
        }, 1500);
    }

    refused_(failure) {
        showTrouble(failure);
    }

    now_(finding) { return this.findings_.find(({ key }) => key === finding.key); }

    take_(finding) {
        const now = this.now_(finding);
        if (!now?.edit) return;
        this.box_.write(now.edit.at, now.edit.wording);
        tell('Written. Ctrl and Z in the text takes it back.');
    }

    // As one change, which one step of the field's own undo takes back.
    takeAllNow_() {
        const edits = fittingEdits(this.findings_);
        if (edits.length === 0 || this.box_.text !== this.answeredText_) return;
        const { at, wording } = asOneEdit(this.box_.text, edits);
        this.box_.write(at, wording);
        tell(`${counted(edits.length, 'wording is', 'wordings are')} written. Ctrl and Z in the text takes ${edits.length === 1 ? 'it' : 'them'} back.`);
    }

    async copy_() {
        try {
            await navigator.clipboard.writeText(this.box_.text);
            tell('The text is copied.');
        } catch (failure) {
            this.box_.field.select();
            showTrouble({ message: 'The browser does not let this page copy.', hint: `The text is selected: copy it by hand (${failure.message})` });
        }
    }

    show_(finding) {
        const now = this.now_(finding);
        if (now) this.box_.select(now.at);
    }
}
