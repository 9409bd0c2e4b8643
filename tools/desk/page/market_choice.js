// The markets whose rules count: none, one, or several. A list for each, and one more on demand, so that no key that moves
// through a list chooses by itself.
import { button, element } from './element.js';

const kNone = 'None chosen: only rules that hold everywhere';

export class MarketChoice {
    // markets: [{market, name}]; chosen: those to begin with; changed(): others are chosen.
    constructor(markets, chosen, changed) {
        this.markets_ = markets;
        this.changed_ = changed;
        this.lists_ = element('div', { class: 'choices' });
        this.more_ = button('Another market', () => this.append_('').focus());
        this.node = element('div', { class: 'markets' }, this.lists_, this.more_);
        for (const market of chosen.length ? chosen : ['']) this.append_(market);
    }

    get value() { return [...new Set(this.selects_().map(({ value }) => value).filter(Boolean))]; }

    selects_() { return [...this.lists_.querySelectorAll('select')]; }

    append_(chosen) {
        const isFirst = this.lists_.firstChild === null;
        const option = (value, name) => element('option', { value, selected: value === chosen }, name);
        const select = element('select', { change: () => this.follow_() }, option('', isFirst ? kNone : 'No other'),
                               this.markets_.map(({ market, name }) => option(market, name)));
        this.lists_.append(element('label', { class: 'choice' }, isFirst ? 'Market ' : 'Also ', select));
        this.show_();
        return select;
    }

    show_() { this.more_.hidden = this.selects_().some(({ value }) => value === ''); }

    follow_() {
        this.show_();
        this.changed_();
    }
}
