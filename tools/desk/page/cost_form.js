// A line of the cost sheet: how it is counted decides which fields it has.
import { currenciesWithoutRate, currencyButton, lacksCurrency, rateButton } from './cost_terms.js';
import { element } from './element.js';
import { choiceField, textField } from './field.js';
import { Form } from './form.js';
import { spoken } from './numbers.js';

// Groups of a dossier's costs, in the order in which they are added (rules/EVIDENCE.md, section 9).
const kGroups = { materials: 'Materials', hardware: 'Hardware', labour: 'Labour', overhead: 'Overhead', packing: 'Packing', margin: 'Margin',
                  freight: 'Freight', insurance: 'Insurance', duty: 'Duty', fees: 'Fees', other: 'Other' };
const kKinds = {
    area: { name: 'By area', keys: ['area', 'price', 'hide', 'width', 'loss'] },
    hides: { name: 'By hides', keys: ['hides', 'price', 'loss'] },
    length: { name: 'By length', keys: ['length', 'price', 'loss'] },
    mass: { name: 'By mass', keys: ['mass', 'price', 'loss'] },
    count: { name: 'By pieces', keys: ['count', 'price'] },
    time: { name: 'By time', keys: ['time', 'rate'] },
    amount: { name: 'One amount', keys: ['amount'] },
    share: { name: 'A share of what stands before it', keys: ['share', 'of'] },
    rate: { name: 'A rate of duty', keys: ['rate', 'base'] },
    none: { name: 'Nothing is paid for it', keys: [] },
};
const kUsualKind = { materials: 'area', hardware: 'count', labour: 'time', overhead: 'share', margin: 'share', duty: 'rate' };
const kNone = 'none';  // of a whole group
const kLosses = ['cutting_yield', 'waste', 'allowance'];
const kAbout = {
    item: ['Name', 'Such as body leather'], part: ['Part', undefined], material: ['Material', 'Such as full grain leather; names that fit are offered as you type'],
    area: ['Area', 'Such as 6.2-6.8 sq ft'], hides: ['Hides', 'Such as 1 side'], length: ['Length', 'Such as 1.6 m'], mass: ['Mass', 'Such as 120 g'],
    count: ['Pieces', 'Such as 2'], time: ['Time', 'Such as 35-45 min'], amount: ['Amount', 'Such as 1.20-1.80 EUR'],
    price: ['Price', 'Such as 4.50-6.00 EUR/sq ft, EUR/hide, EUR/m, EUR/piece'], rate: ['Rate', 'Such as 14-18 EUR/h; of duty 3 %'],
    hide: ['Area of one hide', 'Only for an area at a price per hide'], width: ['Width of the roll', 'Only for an area at a price per length'],
    share: ['Share', 'Such as 35-45 %'], of: ['Of what', 'Such as labour, or names of lines with commas between'], base: ['Of what', 'maker-price or with-freight'],
    cutting_yield: ['Cutting yield', 'The share that ends in the product, such as 65-75 %'], waste: ['Waste', 'The share that does not, such as 25 %'],
    allowance: ['Allowance', 'On top of the net quantity, such as 33 %'],
};

export function groupName(group) { return kGroups[group] ?? spoken(group); }
export function costKeyName(key) { return kAbout[key]?.[0] ?? spoken(key); }

function kindOf(values) {
    return Object.keys(kKinds).find((kind) => kind !== 'rate' && kind !== kNone && values[kind] !== undefined) ?? (values.rate !== undefined ? 'rate' : undefined);
}

export class CostForm {
    // `line`: one to change, with its group; know: {parts: words for parts, by id, currencies, materials}; terms(currency): leads to
    // where a rate of exchange that it lacks is told, or the currency of the totals.
    constructor({ sample, know, group, line, terms, saved, away, remove }) {
        this.sample_ = sample;
        this.line_ = line;
        this.parts_ = [...know.parts];
        this.materials_ = know.materials;
        this.values_ = { ...line?.values };
        this.fields_ = [];
        this.group_ = choiceField({ key: 'group', label: 'Group', value: group ?? 'materials', options: Object.entries(kGroups) });
        this.kind_ = choiceField({ key: 'kind', label: 'Counted', value: kindOf(line?.values ?? {}) ?? kUsualKind[group ?? 'materials'] ?? 'amount',
                                   options: Object.entries(kKinds).filter(([kind]) => !line || kind !== kNone).map(([kind, { name }]) => [kind, name]) });
        this.group_.input.addEventListener('change', () => {
            this.kind_.input.value = kUsualKind[this.group_.value] ?? 'amount';
            this.build_();
        });
        this.kind_.input.addEventListener('change', () => this.build_());
        if (line) this.group_.input.disabled = true;
        this.form_ = new Form({ sample, title: line ? `Change the line: ${line.values.item ?? groupName(group)}` : 'Add a line', saveText: 'Save the line',
                                lead: [this.group_, this.kind_], changes: () => this.changes_(), check: () => this.check_(),
                                missing: () => this.missing_(), saved, away, remove: line ? remove : undefined,
                                offers: (faults) => [
                                    ...currenciesWithoutRate(faults, know).map((currency) => rateButton(currency, terms)),
                                    lacksCurrency(faults, sample.saved) ? currencyButton(terms) : null].filter(Boolean).map((one) => element('p', { class: 'deeds' }, one)) });
        this.node = this.form_.node;
        this.build_();
    }

    focus() {
        (this.line_ ? this.form_.title : this.group_).focus();
        this.node.scrollIntoView({ block: 'nearest' });
    }

    putAway() { this.form_.putAway(); }

    build_() {
        for (const field of this.fields_) this.values_[field.key] = this.valueOf_(field);
        if (this.kind_.value === kNone) {
            this.fields_ = [];
            this.form_.show([], []);
            return;
        }
        const written = Object.keys(this.line_?.values ?? {});
        const keys = ['item', ...kKinds[this.kind_.value].keys.flatMap((key) => (key === 'loss' ? this.lossKeys_(written) : [key])), 'part', 'material'];
        const others = written.filter((key) => !keys.includes(key) && kAbout[key] === undefined);
        this.fields_ = [...keys, ...others].map((key) => this.field_(key));
        this.form_.show([], this.fields_);
    }

    lossKeys_(written) {
        const own = kLosses.filter((key) => written.includes(key));
        return own.length ? own : ['cutting_yield'];
    }

    field_(key) {
        const [label, hint] = kAbout[key] ?? [spoken(key)];
        const value = this.values_[key] ?? '';
        if (key === 'part') return choiceField({ key, label, value, options: [['', 'None'], ...this.parts_] });
        if (key === 'material') return textField({ key, label, hint, value: this.materials_.nameOf(value), offers: this.materials_.names });
        return textField({ key, label, hint, value });
    }

    valueOf_({ key, value }) { return key === 'material' ? this.materials_.idOf(value) : value; }

    // What is said of a group as a whole must not take the place of its lines.
    check_() {
        const groups = this.sample_.saved.costs?.sheet?.groups ?? [];
        const hasLines = groups.some(({ group, lines }) => group === this.group_.value && lines.length > 0);
        return this.kind_.value === kNone && hasLines ? [{ key: 'kind', message: 'Lines of this group are on record. Take them out first.' }] : [];
    }

    // A line is counted by what its kind asks for first; the server tells of the others.
    missing_() {
        const [key] = kKinds[this.kind_.value].keys;
        return [{ key, message: `${costKeyName(key)} is missing: fill it in, or count the line in another way.` }];
    }

    changes_() {
        if (this.kind_.value === kNone) {
            return this.check_().length ? null : [{ do: 'set', of: 'costs', key: this.group_.value, value: kNone }];
        }
        const line = Object.fromEntries(this.fields_.map((field) => [field.key, this.valueOf_(field)]).filter(([, value]) => value !== ''));
        if (Object.keys(line).every((key) => ['item', 'part', 'material'].includes(key))) return null;
        return [this.line_ ? { do: 'change-cost', group: this.group_.value, index: this.line_.index, line }
                           : { do: 'add-cost', group: this.group_.value, line }];
    }
}
