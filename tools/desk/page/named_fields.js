// Fields that have names of their own, as attributes and rates of exchange have: those on record, each of which can be taken
// out, and more that can be added.
import { button, element } from './element.js';

export class NamedFields {
    // known: [[name, text]]. makeName(), makeText(name, text): their fields; the text's has the name as its key, as in the file.
    // addText: of the button that adds one; nameless, twice(name): what is told where a name is missing or there already.
    // changed(): fields have come, gone, or are to be taken out.
    constructor({ known, makeName, makeText, addText, nameless, twice, changed }) {
        this.make_ = { makeName, makeText };
        this.told_ = { nameless, twice };
        this.changed_ = changed;
        this.list_ = element('div');
        this.add_ = button(addText, () => this.append());
        this.node = element('div', { class: 'named' }, this.list_, element('p', { class: 'deeds' }, this.add_));
        this.rows_ = known.map(([name, text]) => this.knownRow_(name, text));
        this.list_.replaceChildren(...this.rows_.map(({ node }) => node));
    }

    get fields() { return this.rows_.flatMap(({ nameField, field, isGone }) => (isGone ? [] : [nameField, field])).filter(Boolean); }

    // [[name, text]] of what is to be written; "" takes it out.
    get changes() {
        return this.rows_.flatMap((row) => {
            const name = this.nameOf_(row);
            if (row.isGone) return [[name, '']];
            return name === '' || row.field.value === row.before ? [] : [[name, row.field.value]];
        });
    }

    // [[name, field]] of those that are there.
    get named() { return this.rows_.filter(({ isGone }) => !isGone).map((row) => [this.nameOf_(row), row.field]); }

    // Faults, with the key of the field that they are about.
    check() {
        const names = this.rows_.map((row) => this.nameOf_(row));
        return this.rows_.flatMap(({ nameField, field }, i) => {
            if (!nameField) return [];
            if (names[i] === '') return field.value === '' ? [] : [{ key: nameField.key, message: this.told_.nameless }];
            return names.indexOf(names[i]) < i ? [{ key: nameField.key, message: this.told_.twice(names[i]) }] : [];
        });
    }

    // One more, by that name where it is known. It gets the focus.
    append(name = '') {
        const there = this.rows_.find((row) => this.nameOf_(row) === name && name !== '');
        if (there) {
            if (there.isGone) there.toggle();
            there.field.focus();
            return;
        }
        const row = { before: '', isGone: false, nameField: this.make_.makeName(name), field: this.make_.makeText('', '') };
        const follow = () => { row.field.key = row.nameField.value; };
        for (const event of ['input', 'change']) row.nameField.input.addEventListener(event, follow);
        follow();
        row.node = element('div', { class: 'named-row' }, row.nameField.node, row.field.node,
                           element('p', { class: 'deeds' }, button('Leave it out', () => this.leaveOut_(row))));
        this.rows_.push(row);
        this.list_.append(row.node);
        this.changed_();
        (name ? row.field : row.nameField).focus();
    }

    nameOf_({ name, nameField }) { return name ?? nameField.value; }

    leaveOut_(row) {
        this.rows_ = this.rows_.filter((one) => one !== row);
        row.node.remove();
        this.changed_();
        this.add_.focus();
    }

    knownRow_(name, text) {
        const field = this.make_.makeText(name, text);
        const row = { name, field, isGone: false, before: field.value };
        const gone = element('p', { hidden: true }, element('strong', {}, name), ' is taken out when you save.');
        const press = button('Take it out', () => row.toggle(), { 'aria-label': `Take it out: ${name}` });
        row.toggle = () => {
            row.isGone = !row.isGone;
            field.node.hidden = row.isGone;
            gone.hidden = !row.isGone;
            press.textContent = row.isGone ? 'Keep it' : 'Take it out';
            press.setAttribute('aria-label', `${press.textContent}: ${name}`);
            this.changed_();
        };
        row.node = element('div', { class: 'named-row' }, field.node, gone, element('p', { class: 'deeds' }, press));
        return row;
    }
}
