// The facts of the sample and of its listing's capture: shown in a line each, changed in one form.
import { button, element } from './element.js';
import { choiceField, textField } from './field.js';
import { Form } from './form.js';
import { spoken } from './numbers.js';
import { tell } from './told.js';

function fieldsOf({ sample, listing }, know) {
    const text = (of, key, label, hint, type) => ({ of, key, field: textField({ key, label, hint, type, value: (of === 'sample' ? sample : listing)?.[key] ?? '' }) });
    const pick = (of, key, label, options) => ({ of, key, field: choiceField({ key, label, value: (of === 'sample' ? sample : listing)?.[key] ?? '', options: [['', 'Not told'], ...options] }) });
    return [
        text('sample', 'what', 'What it is', 'Such as Tote bag, tan'), pick('sample', 'category', 'Sort of goods', know.categories.map((category) => [category, spoken(category)])),
        text('sample', 'seller', 'Seller'), text('sample', 'bought', 'Bought on', undefined, 'date'), text('sample', 'price', 'Price paid', 'Such as 189.00 USD'),
        pick('sample', 'condition', 'Condition', [['new', 'New'], ['used', 'Used']]), text('sample', 'months_in_use', 'Months in use'),
        text('listing', 'captured', 'Listing captured on', 'Its day decides which rules hold.', 'date'),
        pick('listing', 'region', 'Sold in', know.markets.map(({ market, name }) => [market, name])),
    ];
}

export function factsLine({ sample }) {
    const months = sample.months_in_use;
    const facts = [['Seller', sample.seller], ['Bought', sample.bought], ['Price', sample.price], ['Condition', sample.condition],
                   ['Months in use', months === undefined || months === '' ? undefined : months]];
    return element('dl', { class: 'facts' }, facts.filter(([, value]) => value !== undefined && value !== '' && value !== null)
        .map(([name, value]) => element('div', {}, element('dt', {}, name), element('dd', {}, value))));
}

export class SampleFacts {
    constructor(sample, know) {
        this.sample_ = sample;
        this.know_ = know;
        this.place_ = element('div');
        this.open_ = button('Change these facts', () => this.change());
        this.node = element('div', {}, element('p', { class: 'deeds' }, this.open_), this.place_);
    }

    change() {
        const before = this.sample_.saved;
        const fields = fieldsOf(before, this.know_);
        const changes = () => {
            const typed = fields.filter(({ of, key, field }) => field.value !== String(before[of]?.[key] ?? ''))
                .map(({ of, key, field }) => ({ do: 'set', of, key, value: field.value }));
            return typed.length ? typed : null;
        };
        const close = () => {
            this.place_.replaceChildren();
            this.open_.hidden = false;
            this.open_.focus();
        };
        const form = new Form({ sample: this.sample_, title: 'Facts of the sample', fields: fields.map(({ field }) => field), changes, away: close,
                                saved: () => { close(); tell('Saved: facts of the sample.'); } });
        this.open_.hidden = true;
        this.place_.replaceChildren(form.node);
        form.title.focus();
    }
}
