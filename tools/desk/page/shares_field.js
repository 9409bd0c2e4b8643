// A value of several numbers, each of its own name: the shares of elements or fibres, which are added row by row, and the three
// numbers of a colour. What is written is 'Zn: 95.4 ± 0.6 %, Al: 4.0 ± 0.3 %', as the server takes it and tells it.
import { button, element, freshId } from './element.js';
import { faultText } from './fault_text.js';
import { neededMark, textField, withUnit } from './field.js';
import { MaterialNames } from './names.js';
import { capital } from './numbers.js';

function piecesOf(text) {
    return text.split(',').map((piece) => piece.trim()).filter(Boolean).map((piece) => {
        const [, name, value] = /^([^:]*):?(.*)$/.exec(piece);
        return [name.trim(), value.trim()];
    });
}

// A comma stands between the numbers, so within one it is a point.
const withPoint = (value) => value.replace(/(\d),(?=\d)/g, '$1.');

export class SharesField {
    // members: [{id, name}] of what has a number. `each`: what one of them is called, where a person adds them; else all of them
    // have a row. changed(): the value is another, though nobody has typed.
    constructor({ key, label, needed, value = '', members, each, unit, hint, changed }) {
        this.key = key;
        this.label = label;
        this.isTouched = false;
        this.isFaulty = false;
        this.names_ = new MaterialNames(members.map(({ id, name }) => ({ material: id, name })));
        this.each_ = each;
        this.unit_ = unit;
        this.changed_ = changed;
        this.faults_ = [];
        this.fault_ = element('p', { class: 'fault', id: freshId('fault') });
        this.list_ = element('div', { class: 'shares' });
        const hintId = freshId('hint');
        this.node = element('fieldset', { class: 'one-field', 'aria-describedby': `${hint ? `${hintId} ` : ''}${this.fault_.id}` },
            element('legend', {}, label, neededMark(needed)),
            hint ? element('p', { class: 'hint', id: hintId }, hint) : null, this.list_,
            each ? element('p', { class: 'deeds' }, button(`Another ${each}`, () => this.add_('', '').name.focus())) : null, this.fault_);
        this.node.addEventListener('change', () => { this.isTouched = true; this.showFaults_(); });
        this.rows_ = [];
        const known = piecesOf(value);
        const of = (id) => known.find(([name]) => name === id)?.[1] ?? '';
        if (!each) for (const { id } of members) this.add_(id, of(id));
        else for (const [name, share] of known.length > 0 ? known : [['', ''], ['', '']]) this.add_(name, share);
    }

    get value() {
        return this.rows_.filter(({ share, name, isLeft }) => share.value || (isLeft && name?.value))
            .map((row) => `${this.nameOf_(row)}: ${withUnit(withPoint(row.share.value), this.unit_)}`).join(', ');
    }

    set faults(list) {
        this.faults_ = list;
        this.isFaulty = list.length > 0;
        this.showFaults_();
    }

    focus() { (this.node.querySelector('[aria-invalid]') ?? this.node.querySelector('input')).focus(); }

    nameOf_({ id, name }) { return id ?? this.names_.idOf(name.value); }

    add_(id, share) {
        const row = { share: textField({ label: this.each_ ? 'Share' : id, value: share, unit: this.unit_, plusMinus: true }) };
        if (this.each_) row.name = textField({ label: capital(this.each_), value: this.names_.nameOf(id), offers: this.names_.names });
        else row.id = id;
        // Nobody has forgotten a number before its field was left empty.
        row.share.input.addEventListener('blur', () => {
            row.isLeft = true;
            if (row.share.value || !row.name?.value) return;
            this.isTouched = true;
            this.changed_();
        });
        const out = this.each_ ? button('Leave it out', () => this.leaveOut_(row)) : null;
        row.node = element('div', { class: 'share-row' }, row.name?.node, row.share.node, out);
        this.rows_.push(row);
        this.list_.append(row.node);
        return row;
    }

    leaveOut_(row) {
        this.rows_ = this.rows_.filter((one) => one !== row);
        row.node.remove();
        this.changed_();
        this.node.querySelector('.deeds button').focus();
    }

    // At the row whose name or number a fault quotes, else at all.
    showFaults_() {
        const shown = this.isTouched ? this.faults_.map(faultText).join(' ') : '';
        if (this.fault_.textContent !== shown) this.fault_.textContent = shown;
        const isQuoted = (text) => text && this.faults_.some(({ message }) => ["'", '`'].some((mark) => message.includes(mark + text)));
        const quoted = this.rows_.filter((row) => isQuoted(this.nameOf_(row)) || isQuoted(withPoint(row.share.value)));
        for (const row of this.rows_) {
            const isAtFault = shown !== '' && (quoted.length === 0 || quoted.includes(row));
            for (const field of [row.name, row.share].filter(Boolean)) {
                if (isAtFault) field.input.setAttribute('aria-invalid', 'true');
                else field.input.removeAttribute('aria-invalid');
            }
        }
    }
}
