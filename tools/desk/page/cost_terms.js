// On what terms costs add up: the currency of the totals, what others are worth in it, the sales tax in the price, the market.
import { button, element } from './element.js';
import { choiceField, textField, withUnit } from './field.js';
import { Form } from './form.js';
import { NamedFields } from './named_fields.js';
import { notRead } from './not_read.js';
import { redrawn } from './redrawn.js';
import { tell } from './told.js';

// The currencies of `know` that faults name as having no rate.
export function currenciesWithoutRate(faults, { currencies }) {
    const known = new Set(currencies.map(({ currency }) => currency));
    const named = faults.filter(({ code }) => code === 'missing-exchange').map(({ message }) => message.split(' ').find((word) => known.has(word)));
    return [...new Set(named.filter(Boolean))];
}

export function rateButton(currency, open) {
    return button(`Say what one ${currency} is worth`, () => open(currency), { 'data-keep': `rate ${currency}` });
}

// Whether faults say that nothing tells the currency of the totals.
export function lacksCurrency(faults, { sample, costs }) {
    return faults.some(({ code }) => code === 'missing-currency') && !sample?.price && costs?.sheet?.values.currency === undefined;
}

export function currencyButton(open) {
    return button('Choose the currency of the totals', () => open(), { 'data-keep': 'totals currency' });
}

// The code in a price as people write it.
function currencyOf(price, { currencies }) {
    return currencies.map(({ currency }) => currency).find((currency) => price?.includes(currency));
}

function termsText({ currency, values, exchange, region }, markets) {
    const market = values.sold_in ?? region;
    const name = markets.find((one) => one.market === market)?.name ?? market;
    return [currency ? `Totals in ${currency}` : null, ...Object.entries(exchange).map(([code, worth]) => `one ${code} is ${worth} ${currency ?? ''}`.trim()),
            values.sales_tax ? `sales tax in the price: ${values.sales_tax}` : 'the price counts as it stands, no sales tax is taken out', name ? `sold in ${name}` : null]
        .filter(Boolean).join('; ');
}

export class CostTerms {
    // know: {currencies, markets}
    constructor(sample, know) {
        this.sample_ = sample;
        this.know_ = know;
        this.place_ = element('div');
        const told = element('div');
        this.open_ = button('Change rates and tax', () => this.change());
        this.node = element('div', {}, told, element('p', { class: 'deeds' }, this.open_), this.place_);
        this.drawTold_ = redrawn(told, (terms, lacking, isNameless, isRead) => [
            isNameless ? element('p', { class: 'deeds' }, element('span', {}, 'Nothing tells in which currency the costs add up.'), currencyButton(() => this.change())) : null,
            !isRead ? notRead('On what terms the costs add up') : terms ? element('p', {}, `${termsText(terms, know.markets)}.`) : element('p', { class: 'quiet' }, 'Nothing is on record: totals stand in the currency of the price.'),
            lacking.map((currency) => element('p', { class: 'deeds' }, element('span', {}, `${currency} has no rate, so it cannot be counted.`),
                                              rateButton(currency, (code) => this.change(code))))]);
    }

    // `shown`: with what is typed; `saved`: as on disk.
    show(shown, saved) {
        const { sheet, sums } = shown.costs ?? {};
        const { price } = shown.sample ?? {};
        const currency = sheet?.values.currency ?? sums?.currency ?? currencyOf(price, this.know_);
        const isOnRecord = sums?.on_record ?? (sheet !== undefined && (sheet.groups.length > 0 || Object.keys(sheet.values).length > 0));
        const lacking = currenciesWithoutRate(saved.faults ?? [], this.know_);
        const paid = currencyOf(price, this.know_);
        // The book tells no fault of a price that is not compared.
        if (sums?.on_record && paid && paid !== currency && sheet.exchange[paid] === undefined) lacking.push(paid);
        this.currency_ = currency;
        this.region_ = shown.listing?.region;
        // A file that is no YAML has no sheet to change.
        this.open_.hidden = saved.costs === undefined || this.form_ !== undefined;
        this.drawTold_(isOnRecord ? { currency, values: sheet.values, exchange: sheet.exchange, region: this.region_ } : undefined, lacking,
                        lacksCurrency(saved.faults ?? [], saved), sheet !== undefined);
    }

    // `currency`: one that wants a rate, none: the form as such; back(): where to go when it is done.
    change(currency, back) {
        this.back_ = back;
        if (!this.form_) this.build_();
        if (currency) this.rates_.append(currency);
        else this.form_.title.focus();
        this.form_.node.scrollIntoView({ block: 'nearest' });
    }

    putAway() { this.form_?.putAway(); }

    build_() {
        const { values, exchange } = this.sample_.saved.costs.sheet;
        const { currencies, markets } = this.know_;
        const names = currencies.map(({ currency, name }) => [currency, `${currency}, ${name}`]);
        const asPrice = values.currency ? 'As the price' : `As the price${this.currency_ ? `: ${this.currency_}` : ''}`;
        const region = markets.find(({ market }) => market === this.region_)?.name;
        this.fields_ = [
            choiceField({ key: 'currency', label: 'Totals stand in', value: values.currency ?? '', options: [['', asPrice], ...names] }),
            textField({ key: 'sales_tax', label: 'Sales tax in the price paid', value: (values.sales_tax ?? '').replace(/\s*%$/, ''), unit: '%',
                        hint: 'Such as 22; 0 where there is none in it. Left empty, the price counts as it stands.' }),
            choiceField({ key: 'sold_in', label: 'Sold in', hint: 'Decides of what duty is taken.', value: values.sold_in ?? '',
                          options: [['', region ? `As the listing: ${region}` : 'As the listing'], ...markets.map(({ market, name }) => [market, name])] })];
        this.before_ = this.fields_.map(({ value }) => value);
        const hint = `In the currency of the totals${this.currency_ ? `, ${this.currency_}` : ''}, on the day; such as 0.86-0.88`;
        let count = 0;
        this.rates_ = new NamedFields({
            known: Object.entries(exchange), addText: 'Add a rate', nameless: 'Choose the currency that this is the rate of.',
            twice: (code) => `There is a rate of ${code} already.`,
            makeName: (code) => { count += 1; return choiceField({ key: `currency of rate ${count}`, label: 'Currency', value: code, options: [['', 'Choose it'], ...names] }); },
            makeText: (code, worth) => textField({ key: code, label: code ? `One ${code} is worth` : 'One of it is worth', hint, value: worth }),
            changed: () => { this.form_.hold(this.allFields_()); this.form_.typed(); },
        });
        this.form_ = new Form({ sample: this.sample_, title: 'Rates and tax', saveText: 'Save rates and tax',
                                changes: () => this.changes_(), check: () => this.rates_.check(),
                                away: () => this.close_(), saved: () => { this.close_(); tell('Saved: rates and tax.'); } });
        const [currency, ...others] = this.fields_;
        this.form_.show([], this.allFields_(), [currency.node, this.rates_.node, others.map(({ node }) => node)]);
        this.open_.hidden = true;
        this.place_.replaceChildren(this.form_.node);
    }

    allFields_() { return [...this.fields_, ...this.rates_.fields]; }

    changes_() {
        const set = (key, value) => ({ do: 'set', of: 'costs', key, value });
        const typed = [...this.fields_.filter((field, i) => field.value !== this.before_[i]).map((field) => [field.key, withUnit(field.value, field.unit)]),
                       ...this.rates_.changes.map(([code, worth]) => [`exchange.${code}`, worth])];
        return typed.length ? typed.map(([key, value]) => set(key, value)) : null;
    }

    close_() {
        const back = this.back_;
        this.form_ = undefined;
        this.place_.replaceChildren();
        this.open_.hidden = false;
        if (back) back();
        else this.open_.focus();
    }
}
