// Fields of forms: a label, what to write, the unit beside it, and the fault below it that the server found. A fault is
// shown once a person has left the field or asked to save, not while the first key is pressed.
import { button, element, freshId } from './element.js';
import { faultText } from './fault_text.js';
import { MarkedField } from './marked_field.js';

// needed: true, or the words for how far it is needed.
export function neededMark(needed) {
    return needed ? element('span', { class: 'needed' }, ` (${needed === true ? 'needed' : needed})`) : null;
}

class Field {
    constructor({ key, label, hint, needed }, input, around = input) {
        this.key = key;
        this.label = label;
        this.input = input;
        this.isTouched = false;
        this.faults_ = [];
        this.refusal_ = undefined;
        this.fault_ = element('p', { class: 'fault', id: freshId('fault') });
        input.id = freshId('field');
        const hintId = freshId('hint');
        input.setAttribute('aria-describedby', `${hint ? `${hintId} ` : ''}${this.fault_.id}`);
        this.node = element('div', { class: 'one-field' },
            element('label', { for: input.id }, label, neededMark(needed)),
            hint ? element('p', { class: 'hint', id: hintId }, hint) : null, around, this.fault_);
        input.addEventListener('change', () => { this.isTouched = true; this.showFaults_(); });
    }

    get value() { return this.input.value.trim(); }

    set faults(list) {
        this.faults_ = list;
        this.showFaults_();
    }

    // What was refused here and keeps nothing from being saved, as a picture that is none; undefined: no longer.
    set refusal(fault) {
        this.refusal_ = fault;
        this.showFaults_();
    }

    get isFaulty() { return this.faults_.length > 0; }
    focus() { this.input.focus(); }

    showFaults_() {
        const told = [...(this.refusal_ ? [this.refusal_] : []), ...(this.isTouched ? this.faults_ : [])];
        const shown = told.map(faultText).join(' ');
        if (this.fault_.textContent !== shown) this.fault_.textContent = shown;
        if (shown) this.input.setAttribute('aria-invalid', 'true');
        else this.input.removeAttribute('aria-invalid');
    }
}

// A value without a unit gets the one that stands beside its field, before a `(k=1)` where there is one.
export function withUnit(text, unit) {
    const [, value, factor] = /^(.*?)(\s*\(k\s*=.*\))?$/.exec(text);
    if (!unit || !/\d/.test(value) || /[^\d\s.,+\u00b1-]/.test(value.replace(/^exactly\b/, ''))) return text;
    return `${value} ${unit}${factor ?? ''}`;
}

// type: text (default) or date; `unit` stands beside it; with `plusMinus` a press writes that sign, which few keyboards have.
// offers: texts of which the browser proposes those that fit what is typed.
export function textField({ type = 'text', value = '', unit, plusMinus, offers, ...words }) {
    const list = offers ? element('datalist', { id: freshId('offers') }, offers.map((one) => element('option', { value: one }))) : null;
    const input = element('input', { type, value, autocomplete: 'off', spellcheck: 'false', autocapitalize: 'off', list: list?.id });
    const write = () => {
        input.setRangeText(' ± ', input.selectionStart, input.selectionEnd, 'end');
        input.dispatchEvent(new Event('input', { bubbles: true }));
        input.focus();
    };
    const around = element('div', { class: 'beside' }, input, list, unit ? element('span', { class: 'unit' }, unit) : null,
                           plusMinus ? button('±', write, { class: 'sign', 'aria-label': `Write plus-minus into ${words.label}` }) : null);
    const field = new Field(words, input, around);
    field.unit = unit;
    return field;
}

export function noteField({ value = '', rows = 2, ...words }) {
    const input = element('textarea', { rows, autocomplete: 'off' });
    input.value = value;
    return new Field(words, input);
}

// A text of the listing. What is not touched stays as it is to the byte; what is keeps its end, and several new lines end as lines do.
class ListingTextField extends Field {
    constructor(words, marked, before) {
        super(words, marked.field, marked.node);
        this.marked_ = marked;
        this.before_ = before;
        marked.fill(before.trimEnd());
        this.shown_ = marked.text;
    }

    get value() {
        if (this.input.value === this.shown_) return this.before_;
        const text = this.input.value.replace(/^\n+/, '').trimEnd();
        if (text === '') return '';
        return text + (this.before_ ? /\s*$/.exec(this.before_)[0] : text.includes('\n') ? '\n' : '');
    }

    // The marks of `text`, the field's as the server read it.
    mark(text, marks) { this.marked_.mark(text, marks); }
}

// With `lines` Enter begins another line, else it saves.
export function listingTextField({ value = '', lines, ...words }) {
    const pressed = (event) => {
        if (lines || event.key !== 'Enter' || event.isComposing) return;
        event.preventDefault();
        event.target.form?.requestSubmit();
    };
    return new ListingTextField(words, new MarkedField({ rows: lines ? 4 : 1, keydown: pressed }), value);
}

// options: [[value, name]] or [{group, options}].
export function choiceField({ value = '', options, ...words }) {
    const one = ([option, name]) => element('option', { value: option, selected: option === value }, name);
    const input = element('select', {}, options.map((entry) => (Array.isArray(entry) ? one(entry)
        : element('optgroup', { label: entry.group }, entry.options.map(one)))));
    return new Field(words, input);
}

// One of several, each with a target that a gloved finger hits.
export function pickField({ key, label, value, choices, needed }) {
    const name = freshId('pick');
    const fault = element('p', { class: 'fault', id: freshId('fault') });
    const pick = ([id, title]) => element('label', { class: 'pick' },
        element('input', { type: 'radio', name, value: id, checked: id === value }), element('span', {}, title));
    const node = element('fieldset', { class: 'one-field', 'aria-describedby': fault.id },
        element('legend', {}, label, neededMark(needed)),
        choices.map(pick), fault);
    return {
        key, label, node, isTouched: false, isFaulty: false,
        get value() { return node.querySelector('input:checked')?.value ?? ''; },
        set faults(list) { this.isFaulty = list.length > 0; fault.textContent = this.isTouched ? list.map(faultText).join(' ') : ''; },
        focus() { (node.querySelector('input:checked') ?? node.querySelector('input')).focus(); },
    };
}

function lastKey(before, keys) {
    const places = keys.map((key) => [Math.max(before.lastIndexOf(` ${key}:`), before.lastIndexOf(`{${key}:`)), key]).filter(([place]) => place >= 0);
    return places.sort(([a], [b]) => b - a)[0]?.[1];
}

// The key before a place of the file, of `keys`: a fault in a value stands behind the value's key, on the same line, or on
// lines below it that are further in.
export function keyBefore({ line, column }, text, keys) {
    const lines = text?.split('\n') ?? [];
    const inOf = (one) => one.search(/\S/);
    const isItem = (one) => /^\s*- /.test(one);  // what stands behind its dash is beside, not around, what is further in
    const own = lines[line - 1] ?? '';
    const before = own.slice(0, column);
    if (isItem(own)) return lastKey(before, keys);  // at its first key stands the item as such
    const key = lastKey(before + (/^[\w.-]*:/.exec(own.slice(column))?.[0] ?? ''), keys);
    if (key !== undefined) return key;
    let depth = inOf(own);
    for (let at = line - 2; at >= 0 && depth > 0; at -= 1) {
        const outer = inOf(lines[at]);
        if (outer < 0 || outer >= depth) continue;
        if (isItem(lines[at])) return undefined;
        const around = lastKey(lines[at], keys);
        if (around !== undefined) return around;
        depth = outer;
    }
    return undefined;
}

// Of the field whose key a fault says is missing: that has no place in the file.
function missingKey({ code, quoted }, keys) {
    return code?.startsWith('missing-') && keys.includes(quoted) ? quoted : undefined;
}

// A fault with the keys of the file as people read them here, which is by the labels of their fields; quoted: the first of them.
export function inLabels(fault, fields) {
    const labels = new Map(fields.filter(({ label }) => label).map(({ key, label }) => [key, label]));
    const told = (text) => text?.replaceAll(/`([^`]+)`/g, (whole, key) => (labels.has(key) ? `\u201c${labels.get(key)}\u201d` : whole));
    const [, quoted] = /`([^`]+)`/.exec(fault.message) ?? [];
    return { ...fault, quoted, message: told(fault.message), hint: told(fault.hint) };
}

// Puts faults at the fields that they are about; gives back those that are about none. `text`: of the file with what is typed.
export function placeFaults(fields, faults, text) {
    const rest = new Set(faults);
    const keys = fields.map(({ key }) => key);
    const keyOf = (fault) => fault.key ?? missingKey(fault, keys) ?? keyBefore(fault, text, keys);
    for (const field of fields) {
        const own = faults.filter((fault) => {
            const key = keyOf(fault);
            return key !== undefined && (key === field.key || key.startsWith(`${field.key}.`));
        });
        own.forEach((fault) => rest.delete(fault));
        field.faults = own;
    }
    return [...rest];
}

// Shows all faults from now on, and leads to the first.
export function showAllFaults(fields) {
    for (const field of fields) field.isTouched = true;
}

export function focusFirstFault(fields) {
    const first = fields.find(({ isFaulty }) => isFaulty);
    first?.focus();
    return first !== undefined;
}
