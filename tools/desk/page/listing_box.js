// The field of a draft: its words are marked while one types, a stretch of it can be written anew, and Alt and Enter at
// marked words asks what is said of them. A press on them offers it: the focus stays where one may want to type.
import { button, element } from './element.js';
import { isWorse } from './grades.js';
import { MarkedField } from './marked_field.js';
import { capital } from './numbers.js';

const kMeasure = 'keystroke-to-marks';  // its entry in the browser's timeline
const kMeasuresKept = 500;

export class ListingBox {
    // typed(text) is called on each change; ask(mark) when somebody asks at the caret which finding stands there.
    constructor({ label, hint, typed, ask }) {
        this.typed_ = typed;
        this.ask_ = ask;
        this.since_ = undefined;
        this.marked_ = new MarkedField({ id: 'listing-text', 'aria-describedby': 'listing-hint', rows: 7,
                                         keydown: (event) => this.pressed_(event), click: () => this.offer_() }, (event) => this.changed_(event.timeStamp));
        this.field = this.marked_.field;
        this.offerPlace_ = element('div', { class: 'offer', role: 'status' });
        this.node = element('div', { class: 'listing-box' },
            element('label', { for: 'listing-text' }, label), element('p', { class: 'hint', id: 'listing-hint' }, hint), this.marked_.node, this.offerPlace_);
    }

    get text() { return this.field.value; }

    // Puts a text in the place of all that is there.
    fill(text) {
        this.marked_.fill(text);
        this.changed_(performance.now());
    }

    // The marks of `text`. Where the field holds another text by now, they are moved along.
    mark(text, marks) {
        if (this.offered_ !== undefined && !marks.some(({ key }) => key === this.offered_)) this.withdraw_();
        if (this.marked_.mark(text, marks) && this.since_ !== undefined) this.measure_();
    }

    // Replaces one stretch, as if typed: the browser's own undo in the field takes it back.
    write([start, end], wording) {
        this.field.focus();
        this.field.setSelectionRange(start, end);
        const before = this.field.value;
        const wanted = before.slice(0, start) + wording + before.slice(end);
        document.execCommand(wording === '' ? 'delete' : 'insertText', false, wording);
        if (this.field.value !== wanted) {
            this.fill(wanted);
        }
    }

    select([start, end]) {
        this.field.focus({ preventScroll: true });
        this.field.setSelectionRange(start, end);
        // The field does not scroll, so the page has to: the painted mark tells where the words stand.
        let passed = 0;
        for (const piece of this.marked_.layer.childNodes) {
            passed += piece.textContent.length;
            if (passed > start) {
                const shown = piece.nodeType === Node.ELEMENT_NODE ? piece : this.field;
                shown.scrollIntoView({ block: piece === shown ? 'center' : 'nearest' });
                return;
            }
        }
    }

    changed_(since) {
        this.since_ = since;
        this.typed_(this.field.value);
    }

    pressed_(event) {
        if (event.key !== 'Enter' || !event.altKey) return;
        event.preventDefault();
        const mark = this.markAtCaret_();
        if (mark) this.ask_(mark);
    }

    // The worst where several are, as it is painted.
    markAtCaret_() {
        const place = this.field.selectionStart;
        return this.marked_.marks.filter(({ at }) => at[0] <= place && place <= at[1])
            .reduce((found, mark) => (!found || isWorse(mark.grade, found.grade) ? mark : found), undefined);
    }

    offer_() {
        const mark = this.field.selectionStart === this.field.selectionEnd ? this.markAtCaret_() : undefined;
        this.withdraw_();
        if (!mark) return;
        this.offered_ = mark.key;
        this.offerPlace_.replaceChildren(button(`${capital(mark.grade)}: \u201c${mark.words}\u201d. Why?`, () => { this.withdraw_(); this.ask_(mark); }));
    }

    withdraw_() {
        this.offered_ = undefined;
        this.offerPlace_.replaceChildren();
    }

    measure_() {
        const since = this.since_;
        this.since_ = undefined;
        // A frame's callback runs before its paint, a message sent from there after it.
        requestAnimationFrame(() => {
            const { port1, port2 } = new MessageChannel();
            port1.onmessage = () => {
                performance.measure(kMeasure, { start: since, end: performance.now() });
                if (performance.getEntriesByName(kMeasure).length > kMeasuresKept) performance.clearMeasures(kMeasure);
            };
            port2.postMessage(null);
        });
    }
}
