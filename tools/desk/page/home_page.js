// The first sheet: the samples in the folder, and a new one.
import { get, post } from './ask.js';
import { element } from './element.js';
import { faultText } from './fault_text.js';
import { choiceField, focusFirstFault, placeFaults, showAllFaults, textField } from './field.js';
import { counted, spoken } from './numbers.js';
import { endTrouble, showTrouble } from './told.js';

const kMostBytes = 60;  // of the name that is proposed

// A file name out of what a sample is.
export function fileNameOf(what) {
    const letters = [...what.normalize('NFKD').replaceAll(/(?<=[a-z])\p{M}+/giu, '').normalize('NFC').toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-')];
    while (new TextEncoder().encode(letters.join('')).length > kMostBytes) letters.pop();
    return letters.join('').replaceAll(/^-+|-+$/g, '');
}

function sampleLine({ name, what, changed, parts, readings, faults, error }) {
    if (error) return element('li', {}, element('p', {}, element('strong', {}, name), `: ${error}`));
    return element('li', {}, element('a', { href: `#/sample/${encodeURIComponent(name)}` },
        element('span', { class: 'what' }, what || name),
        element('span', { class: 'about' }, `${name}, ${counted(parts, 'part')}, ${counted(readings, 'reading')}, changed ${String(changed).replace('T', ' ')}`)),
        faults ? element('p', { class: 'fault' }, `The file has ${counted(faults, 'fault')}: open it to mend them.`) : null);
}

export class HomePage {
    constructor(know) {
        this.know_ = know;
        this.list_ = element('div');
        this.new_ = element('div');
        this.node = element('div', {}, element('h1', { tabindex: '-1' }, 'Samples'), this.list_, this.new_);
        this.makeForm_('');
    }

    async show() {
        try {
            const { folder, dossiers, others } = await get('/dossiers');
            endTrouble();
            this.list_.replaceChildren(element('p', { class: 'quiet' }, `In the folder ${folder}.`), dossiers.length === 0
                ? element('p', {}, 'No sample is here yet. Begin one below, or check a draft.')
                : element('ul', { class: 'samples' }, dossiers.map(sampleLine)),
                others ? element('p', { class: 'quiet' }, `${counted(others, 'file is', 'files are')} left out: no plain file, or a name that the desk does not serve.`) : '');
        } catch (failure) {
            showTrouble(failure);
        }
    }

    // A new sample with a listing that was checked as a draft, for those markets.
    begin(text, markets) {
        this.makeForm_(text, markets);
        this.isBegun_ = true;
    }

    // Leads to the form of a sample that was begun elsewhere. False: none was.
    beginFocused() {
        if (!this.isBegun_ || !this.node.isConnected) return false;
        this.isBegun_ = false;
        this.new_.scrollIntoView();
        this.what_.focus({ preventScroll: true });
        return true;
    }

    makeForm_(text, markets = []) {
        this.text_ = text;
        this.what_ = textField({ key: 'what', label: 'What it is', needed: true, value: text.split('\n')[0].trim().slice(0, 80), hint: 'Such as Tote bag, tan' });
        this.name_ = textField({ key: 'name', label: 'File name', needed: true, value: fileNameOf(this.what_.value), hint: 'Letters, digits, spaces and -_.() ; .yaml is added.' });
        this.category_ = choiceField({ key: 'category', label: 'Sort of goods', options: [['', 'Not told'], ...this.know_.categories.map((category) => [category, spoken(category)])] });
        // Proposed until somebody writes another one.
        let proposed = this.name_.value;
        this.what_.input.addEventListener('input', () => {
            if (this.name_.value !== proposed && this.name_.value !== '') return;
            proposed = fileNameOf(this.what_.value);
            this.name_.input.value = proposed;
        });
        this.region_ = choiceField({ key: 'region', label: 'Sold in', value: markets.length === 1 ? markets[0] : '',
                                     hint: markets.length > 1 ? `The draft was checked for ${markets.length} markets; a sample is sold in one.` : undefined,
                                     options: [['', 'Not told'], ...this.know_.markets.map(({ market, name }) => [market, name])] });
        const rest = element('div', { class: 'fault', role: 'status' });
        const fields = [this.what_, this.category_, ...(text ? [this.region_] : []), this.name_];
        const form = element('form', { class: 'card form', novalidate: true, 'aria-labelledby': 'new-sample',
                                       input: () => placeFaults(fields, []),  // what was wrong may be so no more; Begin tells
                                       submit: (event) => { event.preventDefault(); this.create_(fields, rest); } },
            element('h2', { id: 'new-sample', tabindex: '-1' }, 'Begin a sample'),
            text ? element('p', {}, 'The draft that you checked becomes its listing, the first line its title.') : null,
            fields.map(({ node }) => node), rest,
            element('p', { class: 'deeds' }, element('button', { type: 'submit', class: 'main' }, 'Begin')));
        this.new_.replaceChildren(form);
    }

    async create_(fields, rest) {
        showAllFaults(fields);
        const missing = [this.what_, this.name_].filter(({ value }) => value === '').map(({ key }) => ({ key, message: 'This is needed.' }));
        placeFaults(fields, missing);
        rest.replaceChildren();
        if (missing.length) {
            focusFirstFault(fields);
            return;
        }
        const body = { name: this.name_.value, what: this.what_.value };
        if (this.category_.value) body.category = this.category_.value;
        if (this.text_) {
            const [title, ...lines] = this.text_.trim().split('\n');
            body.listing = { name: title.trim(), description: lines.join('\n').trim() };
            if (this.region_.value) body.listing.region = this.region_.value;
        }
        try {
            await post('/dossier/new', body);
            this.makeForm_('');
            location.hash = `#/sample/${encodeURIComponent(body.name)}`;
        } catch (failure) {
            const others = placeFaults(fields, failure.faults?.length ? failure.faults : [failure]);
            rest.replaceChildren(...others.map((fault) => element('p', {}, faultText(fault))));
        }
    }
}
