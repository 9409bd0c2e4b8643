// A text field whose words are marked while one types: a layer behind it holds the same text and paints the marks. Layer
// and field share one grid cell and one style, so that the field is as high as its text and never scrolls by itself.
// Screen readers and the keyboard use the list of findings; the layer is hidden from them.
import { element } from './element.js';
import { layerPainter, movedMarks } from './marked_text.js';

export class MarkedField {
    // attributes: of the text field; typed(event) is called on each change by hand.
    constructor(attributes, typed = () => {}) {
        this.marks = [];
        this.text_ = '';
        this.layer = element('div', { class: 'layer', 'aria-hidden': 'true' });
        this.paint_ = layerPainter(this.layer);
        this.field = element('textarea', { class: 'field', spellcheck: 'false', autocomplete: 'off', ...attributes,
                                           input: (event) => { this.follow(); typed(event); } });
        this.node = element('div', { class: 'written' }, this.layer, this.field);
        this.paint_('', []);
    }

    get text() { return this.field.value; }

    // Paints what the field holds by now, its marks moved along.
    follow() {
        const before = this.text_;
        this.text_ = this.field.value;
        this.marks = movedMarks(this.marks, before, this.text_);
        this.paint_(this.text_, this.marks);
    }

    // Puts a text in the place of all that is there.
    fill(text) {
        this.field.value = text;
        this.follow();
    }

    // The marks of `text`. Where the field holds another text by now, they are moved along. True: it holds this one.
    mark(text, marks) {
        this.marks = text === this.text_ ? marks : movedMarks(marks, text, this.text_);
        this.paint_(this.text_, this.marks);
        return text === this.text_;
    }
}
