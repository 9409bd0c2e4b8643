// What the sample costs, line by line, with the total and the price multiple as one types.
import { CostForm, costKeyName, groupName } from './cost_form.js';
import { CostTerms } from './cost_terms.js';
import { button, element } from './element.js';
import { money, percent } from './numbers.js';
import { notRead } from './not_read.js';
import { redrawn } from './redrawn.js';
import { tell } from './told.js';

const kDrivers = 4;

function isExact({ low, high }) { return high - low < 0.005; }

function rangeText({ value, low, high }, currency) {
    if (isExact({ low, high })) return money(value, currency);
    return `${low.toFixed(2)} to ${money(high, currency)}`;
}

function lineText(values, materials) {
    return Object.entries(values).filter(([key]) => key !== 'item')
        .map(([key, value]) => `${costKeyName(key)} ${key === 'material' ? materials.nameOf(value) : value}`).join(', ');
}

function gapText({ what, usual }) {
    return usual.length ? `${what}; usual: ${usual.map(({ title, range }) => `${title} ${range}`).join(', ')}` : what;
}

// `told`: what follows from it, in the words of the report.
function sums(isRead, costs, told, before) {
    if (!isRead) return [notRead('What it costs')];
    if (!costs?.total) return [element('p', { class: 'quiet' }, 'No costs are on record.')];
    const { total, currency, drivers, gaps, remarks } = costs;
    const was = before?.total && money(before.total.value) !== money(total.value) ? element('span', { class: 'was' }, ` was ${money(before.total.value, before.currency)}`) : null;
    return [
        element('p', { class: 'total' }, element('strong', {}, money(total.value, currency)), was,
                isExact(total) ? null : element('span', { class: 'quiet' }, ` (${rangeText(total, currency)})`)),
        told.multiple ? element('p', { class: 'total' }, 'The price is ', element('strong', {}, `${told.multiple} times`), ' the total') : null,
        told.price.map((text) => element('p', { class: 'quiet' }, text)), remarks.map((text) => element('p', {}, text)),
        drivers?.length ? element('div', {}, element('h4', {}, 'What makes it uncertain'), element('ul', {}, drivers.slice(0, kDrivers)
            .map(({ item, input, share }) => element('li', {}, `${item}, its ${input}: ${percent(share)}`)))) : null,
        gaps?.length ? element('div', {}, element('h4', {}, 'What is missing'), element('ul', {}, gaps.map((gap) => element('li', {}, gapText(gap))))) : null,
    ];
}

export class CostSheet {
    constructor(sample, know) {
        this.sample_ = sample;
        this.know_ = know;
        this.lines_ = element('div');
        this.place_ = element('div');
        this.terms_ = new CostTerms(sample, know);
        const sum = element('div', { class: 'sums' });
        this.addButton_ = button('Add a line', () => this.open_({}), { class: 'main' });
        this.head = element('h2', { id: 'costs', tabindex: '-1' }, 'Costs');
        const row = (title, ...content) => element('div', { class: 'row' }, element('h3', {}, title), element('div', {}, content));
        this.node = element('section', { class: 'card', 'aria-labelledby': 'costs' }, this.head, row('Total', sum), row('Rates, tax', this.terms_.node),
                            row('Lines', this.lines_, element('p', { class: 'deeds' }, this.addButton_), this.place_));
        this.drawSum_ = redrawn(sum, sums);
        this.drawLines_ = redrawn(this.lines_, (groups, told) => groups.map(({ group, lines }) => this.group_(group, lines, told)));
    }

    // `shown`: with what is typed; `saved`: as on disk, which alone is listed.
    show(shown, saved, isTyping) {
        this.drawSum_(shown.plan !== undefined, shown.costs?.sums, shown.costs?.told, isTyping ? saved.costs?.sums : undefined);
        this.drawLines_(saved.costs?.sheet?.groups ?? [], shown.costs?.lines ?? []);
        this.terms_.show(shown, saved);
    }

    group_(group, lines, told) {
        if (lines.length === 0) return element('p', { class: 'cost-group' }, element('strong', {}, groupName(group)), ': none');
        return element('div', { class: 'cost-group' }, element('h4', {}, groupName(group)), element('ul', {}, lines.map((line) => {
            const name = line.values.item ?? groupName(group);
            const amount = told.find((one) => one.group === group && one.item === (line.values.item ?? group));
            return element('li', {}, element('div', {}, element('p', {}, element('strong', {}, name), amount ? ` ${rangeText(amount.amount, amount.currency)}` : null),
                                             element('p', { class: 'quiet' }, lineText(line.values, this.know_.materials))),
                button('Change', () => this.open_({ group, line }), { 'data-keep': `cost ${group} ${line.index}`, 'aria-label': `Change: ${name}` }));
        })));
    }

    open_({ group, line }) {
        this.form_?.putAway();
        const close = () => {
            this.place_.replaceChildren();
            this.form_ = undefined;
            this.addButton_.hidden = false;
            this.addButton_.focus();
        };
        this.form_ = new CostForm({ sample: this.sample_, know: this.know_, group, line, away: close,
                                    terms: (currency) => this.terms_.change(currency, () => this.form_?.focus()), remove: () => this.remove_(group, line),
                                    saved: () => { close(); tell('Saved: costs.'); } });
        this.addButton_.hidden = true;
        this.place_.replaceChildren(this.form_.node);
        this.form_.focus();
    }

    async remove_(group, line) {
        if (!await this.sample_.save([{ do: 'remove-cost', group, index: line.index }])) return;
        this.form_?.putAway();
        tell('Taken out. Undo brings it back.');
    }
}
