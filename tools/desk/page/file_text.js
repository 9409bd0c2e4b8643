// The dossier's file itself, to be read and to be mended by hand; faults lead to their line.
import { button, element } from './element.js';
import { faultText } from './fault_text.js';
import { tell } from './told.js';

function lineStart(text, line) {
    let start = 0;
    for (let i = 1; i < line; i += 1) start = text.indexOf('\n', start) + 1;
    return start;
}

export class FileText {
    // changed(): whether something is typed here may be otherwise now.
    constructor(sample, changed) {
        this.sample_ = sample;
        this.changed_ = changed;
        this.field_ = element('textarea', { id: 'file-text', class: 'file-text', rows: 18, spellcheck: 'false', autocomplete: 'off', wrap: 'off', input: changed });
        this.faults_ = element('div', { role: 'status' });
        this.box_ = element('details', { class: 'card file' }, element('summary', {}, element('h2', {}, 'The file')),
            element('label', { for: 'file-text' }, 'The dossier as it stands in its file. Comments and order stay as they are.'), this.field_,
            element('p', { class: 'deeds' }, button('Save the file', () => this.save_(), { class: 'main' }),
                    button('Back to what is on disk', () => this.back_())),
            this.faults_);
        this.node = this.box_;
        this.last_ = '';
    }

    get isTyping() { return this.field_.value !== this.last_; }

    show(saved) {
        // What is being typed here is not overwritten; saving it tells of the change.
        if (!this.isTyping) {
            this.field_.value = saved.text;
            this.last_ = this.field_.value;
        }
        if (saved.faults?.length) this.box_.open = true;
        this.showFaults_(saved.faults ?? []);
    }

    showFaults_(faults) {
        const shown = JSON.stringify(faults);
        if (shown === this.shown_) return;
        this.shown_ = shown;
        this.faults_.replaceChildren(...(faults.length === 0 ? [] : [element('ul', { class: 'fault' }, faults.map((fault) => element('li', {},
            fault.line ? [button(`Line ${fault.line}`, () => this.select_(fault.line)), ' '] : null,
            faultText(fault))))]));
    }

    select_(line) {
        const start = lineStart(this.field_.value, line);
        const end = this.field_.value.indexOf('\n', start);
        this.field_.focus();
        this.field_.setSelectionRange(start, end < 0 ? this.field_.value.length : end);
        const height = parseFloat(getComputedStyle(this.field_).lineHeight);
        this.field_.scrollTop = Math.max(0, (line - 4) * height);
    }

    // What is on disk is in the field.
    settle_() {
        this.field_.value = this.sample_.saved.text;
        this.last_ = this.field_.value;
        this.changed_();
    }

    back_() {
        this.settle_();
        this.showFaults_(this.sample_.saved.faults ?? []);
    }

    async save_() {
        const text = this.field_.value;
        if (!await this.sample_.save([{ do: 'text', text }], { faults: (faults) => this.showFaults_(faults) })) return;
        this.settle_();
        tell('The file is saved.');
    }
}
