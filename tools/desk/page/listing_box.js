// A text field whose words are marked while one types: a layer behind it holds the same text and paints the marks. Layer
// and field share one grid cell and one style, so that the field is as high as its text and never scrolls by itself.
// Screen readers and the keyboard use the list of findings; the layer is hidden from them.
import { element } from './element.js';
import { layerPainter, movedMarks } from './marked_text.js';

const kMeasure = 'keystroke-to-marks';  // its entry in the browser's timeline
const kMeasuresKept = 500;

export class ListingBox {
    // typed(text) is called on each change; ask(mark) when somebody asks at the caret which finding stands there.
    constructor({ label, hint, typed, ask }) {
        this.typed_ = typed;
        this.ask_ = ask;
        this.marks_ = [];
        this.text_ = '';
        this.since_ = undefined;
        this.layer_ = element('div', { class: 'layer', 'aria-hidden': 'true' });
        this.paint_ = layerPainter(this.layer_);
        this.field = element('textarea', { class: 'field', spellcheck: 'false', autocomplete: 'off', id: 'listing-text',
                                           'aria-describedby': 'listing-hint', rows: 7,
                                           input: (event) => this.changed_(event.timeStamp),
                                           keydown: (event) => this.pressed_(event) });
        this.node = element('div', { class: 'listing-box' },
            element('label', { for: 'listing-text' }, label), element('p', { class: 'hint', id: 'listing-hint' }, hint),
            element('div', { class: 'written' }, this.layer_, this.field));
        this.paint_('', []);
    }

    get text() { return this.field.value; }

    // Puts a text in the place of all that is there.
    fill(text) {
        this.field.value = text;
        this.changed_(performance.now());
    }

    // The marks of `text`. Where the field holds another text by now, they are moved along.
    mark(text, marks) {
        this.marks_ = text === this.text_ ? marks : movedMarks(marks, text, this.text_);
        this.paint_(this.text_, this.marks_);
        if (text === this.text_ && this.since_ !== undefined) this.measure_();
    }

    // Replaces one stretch, as if typed: the browser's own undo in the field takes it back.
    write([start, end], wording) {
        this.field.focus();
        this.field.setSelectionRange(start, end);
        const before = this.field.value;
        const wanted = before.slice(0, start) + wording + before.slice(end);
        document.execCommand(wording === '' ? 'delete' : 'insertText', false, wording);
        if (this.field.value !== wanted) {
            this.field.value = wanted;
            this.changed_(performance.now());
        }
    }

    select([start, end]) {
        this.field.focus({ preventScroll: true });
        this.field.setSelectionRange(start, end);
        // The field does not scroll, so the page has to: the painted mark tells where the words stand.
        let passed = 0;
        for (const piece of this.layer_.childNodes) {
            passed += piece.textContent.length;
            if (passed > start) {
                const shown = piece.nodeType === Node.ELEMENT_NODE ? piece : this.field;
                shown.scrollIntoView({ block: piece === shown ? 'center' : 'nearest' });
                return;
            }
        }
    }

    changed_(since) {
        const before = this.text_;
        this.text_ = this.field.value;
        this.since_ = since;
        this.marks_ = movedMarks(this.marks_, before, this.text_);
        this.paint_(this.text_, this.marks_);
        this.typed_(this.text_);
    }

    pressed_(event) {
        if (event.key !== 'Enter' || !event.altKey) return;
        event.preventDefault();
        const place = this.field.selectionStart;
        const mark = this.marks_.find(({ at }) => at[0] <= place && place <= at[1]);
        if (mark) this.ask_(mark);
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
