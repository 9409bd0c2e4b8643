// Checking a draft: a text is pasted, dropped or typed, and marked as it is; what it claims gathers by part below.
import { post } from './ask.js';
import { ClaimsView } from './claims_view.js';
import { button, element } from './element.js';
import { keyed } from './finding_card.js';
import { ListingBox } from './listing_box.js';
import { newest } from './newest.js';
import { counted, spoken } from './numbers.js';
import { endTrouble, showTrouble, speak, tell } from './told.js';

const kMostBytes = 1 << 20;  // of a file that is dropped: a listing is a page, not a book

export class WordsPage {
    // known: {markets, categories, parts, today}; keep(text): makes a sample of it.
    constructor(known, keep) {
        this.known_ = known;
        this.findings_ = [];
        this.box_ = new ListingBox({
            label: 'The listing, as a shopper reads it',
            hint: 'Paste, drop or type it. Alt and Enter at marked words leads to what is said of them.',
            typed: (text) => this.typed_(text),
            ask: (mark) => this.view_.open(mark.key),
        });
        this.view_ = new ClaimsView({ take: (finding) => this.take_(finding), show: (finding) => this.show_(finding) });
        this.ask_ = newest((body, signal) => post('/words', body, signal),
                           (answer, { text }) => this.answered_(answer, text), (failure) => this.refused_(failure));
        this.sum_ = element('p', { class: 'sum' });
        this.market_ = this.choice_('Market', known.markets.map(({ market, name }) => [market, name]), known.market?.length ? `As called: ${known.market.join(', ')}` : 'Any');
        this.category_ = this.choice_('Sort of goods', known.categories.map((category) => [category, spoken(category)]), 'As the text says');
        this.node = element('div', { class: 'words-page' }, element('h1', { tabindex: '-1' }, 'Check a draft'),
            element('div', { class: 'tag' }, this.box_.node,
                element('div', { class: 'choices' }, this.market_.node, this.category_.node)),
            element('div', { class: 'deeds' }, this.filePicker_(), button('Empty it', () => this.empty_()),
                    button('Keep it as a sample', () => keep(this.box_.text))),
            this.sum_, this.view_.node);
        this.node.addEventListener('dragover', (event) => event.preventDefault());
        this.node.addEventListener('drop', (event) => this.dropped_(event));
        this.sum_.textContent = 'Nothing is written yet.';
    }

    get isEmpty() { return this.box_.text.trim() === ''; }

    choice_(label, options, none) {
        const select = element('select', { change: () => this.typed_(this.box_.text) }, element('option', { value: '' }, none),
                               options.map(([value, name]) => element('option', { value }, name)));
        return { node: element('label', { class: 'choice' }, `${label} `, select), get value() { return select.value; } };
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
        const body = { text };
        if (this.market_.value) body.market = [this.market_.value];
        if (this.category_.value) body.category = this.category_.value;
        this.ask_(body);
    }

    answered_({ findings, claims, summary }, text) {
        endTrouble();
        this.findings_ = keyed(findings);
        this.box_.mark(text, this.findings_);
        // The marks come first; the cards follow when they are on the screen.
        clearTimeout(this.later_);
        this.later_ = setTimeout(() => {
            this.view_.show(claims, this.findings_, this.known_.parts);
            this.sum_.textContent = text.trim() === '' ? 'Nothing is written yet.'
                : `${counted(summary.claims, 'claim')}, ${counted(summary.findings, 'finding')}${summary.worst ? `, the worst ${summary.worst}` : ''}.`;
            this.speakLater_();
        });
    }

    // A screen reader hears the sum when typing rests, not after each key.
    speakLater_() {
        clearTimeout(this.speech_);
        this.speech_ = setTimeout(() => speak(this.sum_.textContent), 1500);
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

    show_(finding) {
        const now = this.now_(finding);
        if (now) this.box_.select(now.at);
    }
}
