// What the sample costs to make and to land, line by line, with the total and the price multiple as one types.
import { CostForm, costKeyName, groupName } from './cost_form.js';
import { button, element } from './element.js';
import { money, percent } from './numbers.js';
import { redrawn } from './redrawn.js';
import { tell } from './told.js';

const kDrivers = 4;

function rangeText({ low, mid, high, currency }) {
    if (high - low < 0.005) return money(mid ?? low, currency);
    return `${low.toFixed(2)} to ${money(high, currency)}`;
}

function lineText(line) {
    return Object.entries(line).filter(([key]) => !['index', 'item'].includes(key)).map(([key, value]) => `${costKeyName(key)} ${value}`).join(', ');
}

function sums(costs, before) {
    if (!costs?.total) return [element('p', { class: 'quiet' }, costs?.sheet?.groups?.length ? 'There is no total: see what is missing.' : 'No costs are on record.')];
    const was = before?.total && money(before.total.mid, '') !== money(costs.total.mid, '') ? element('span', { class: 'was' }, ` was ${money(before.total.mid, before.total.currency)}`) : null;
    const { multiple } = costs;
    return [
        element('p', { class: 'total' }, element('strong', {}, money(costs.total.mid, costs.total.currency)), ' to make and to land', was,
                element('span', { class: 'quiet' }, ` (between ${rangeText(costs.total)})`)),
        multiple ? element('p', { class: 'total' }, 'The price is ', element('strong', {}, `${multiple.mid.toFixed(1)} times`), ' that',
                           element('span', { class: 'quiet' }, ` (between ${multiple.low.toFixed(1)} and ${multiple.high.toFixed(1)})`)) : null,
        costs.drivers?.length ? element('div', {}, element('h4', {}, 'What makes it uncertain'), element('ul', {}, costs.drivers.slice(0, kDrivers)
            .map(({ item, what, share }) => element('li', {}, `${item}, its ${what}: ${percent(share)}`)))) : null,
        costs.gaps?.length ? element('div', {}, element('h4', {}, 'What is missing'), element('ul', {}, costs.gaps.map((gap) => element('li', {}, gap)))) : null,
    ];
}

export class CostSheet {
    constructor(sample, know) {
        this.sample_ = sample;
        this.know_ = know;
        this.lines_ = element('div');
        this.place_ = element('div');
        const sum = element('div', { class: 'sums' });
        this.addButton_ = button('Add a line', () => this.open_({}), { class: 'main' });
        this.head = element('h2', { id: 'costs', tabindex: '-1' }, 'Costs');
        const row = (title, ...content) => element('div', { class: 'row' }, element('h3', {}, title), element('div', {}, content));
        this.node = element('section', { class: 'card', 'aria-labelledby': 'costs' }, this.head, row('Total', sum),
                            row('Lines', this.lines_, element('p', { class: 'deeds' }, this.addButton_), this.place_));
        this.drawSum_ = redrawn(sum, sums);
        this.drawLines_ = redrawn(this.lines_, (groups, told) => groups.map(({ group, lines }) => this.group_(group, lines, told)));
    }

    // `costs`: with what is typed; `saved`: as on disk, which alone is listed.
    show(costs, saved, isTyping) {
        this.drawSum_(costs, isTyping ? saved : undefined);
        this.drawLines_(saved?.sheet?.groups ?? [], costs?.lines ?? []);
    }

    group_(group, lines, told) {
        return element('div', { class: 'cost-group' }, element('h4', {}, groupName(group)), element('ul', {}, lines.map((line) => {
            const name = line.item ?? groupName(group);
            const amount = told.find((one) => one.group === group && one.item === (line.item ?? group));
            return element('li', {}, element('div', {}, element('p', {}, element('strong', {}, name), amount ? ` ${rangeText(amount)}` : null),
                                             element('p', { class: 'quiet' }, lineText(line))),
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
        this.form_ = new CostForm({ sample: this.sample_, parts: [...this.know_.parts], group, line, away: close, remove: () => this.remove_(group, line),
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
