// The text of the listing, below its label: begun where there is none, changed field by field, its words marked as one types.
import { button, element } from './element.js';
import { choiceField, listingTextField, textField } from './field.js';
import { Form } from './form.js';
import { fieldName, kProperty } from './listing_label.js';
import { NamedFields } from './named_fields.js';
import { redrawn } from './redrawn.js';
import { tell } from './told.js';

const kTexts = ['name', 'description', 'material', 'category'];
const kHints = { name: 'As the seller heads it.', description: 'As many lines as it has.', material: 'Where the listing has a field of its own for it.',
                 category: 'Its place in the shop, such as Bags.' };

function textsOf(listing) { return new Map((listing?.fields ?? []).map(({ field, text }) => [field, text])); }

// Why the desk leaves the text as it is; nothing where it can be changed.
function reasonToLeave({ sample, listing, faults }) {
    if (listing?.file) return `Its text stands in a file of its own, ${listing.file}, which the desk does not change.`;
    if (sample === undefined || (listing && !listing.fields && faults?.length)) return 'Its text can be changed here once the faults of the file are mended.';
    return undefined;
}

export class ListingText {
    // know: {markets, today}
    constructor(sample, know) {
        this.sample_ = sample;
        this.know_ = know;
        this.place_ = element('div');
        this.open_ = button('Change the listing', () => this.change());
        const deeds = element('div');
        this.node = element('div', {}, deeds, this.place_);
        this.drawDeeds_ = redrawn(deeds, (reason, isThere) => {
            this.open_.textContent = isThere ? 'Change the listing' : 'Begin the listing';
            return reason ? element('p', { class: 'quiet' }, reason) : element('p', { class: 'deeds' }, this.open_);
        });
    }

    // `verdicts`: of what is shown, with the field and place of their words.
    show(shown, saved, verdicts) {
        this.shown_ = [shown, saved, verdicts];
        this.drawDeeds_(reasonToLeave(saved), saved.listing !== undefined);
        if (!this.form_) return;
        const texts = textsOf(shown.listing);
        for (const [field, input] of this.fieldsByName_()) {
            if (texts.has(field)) input.mark(texts.get(field), verdicts.filter((verdict) => verdict.field === field));
            else input.mark('', []);
        }
    }

    tellEffect(text) { this.form_?.tellEffect(text); }

    change() {
        const { listing } = this.sample_.saved;
        const texts = textsOf(listing);
        this.texts_ = kTexts.map((key) => listingTextField({ key, label: fieldName(key), hint: kHints[key], value: texts.get(key) ?? '', lines: key === 'description' }));
        this.before_ = new Map(this.texts_.map((field) => [field, field.value]));
        this.capture_ = listing ? [] : [
            textField({ key: 'captured', label: 'Captured on', hint: 'Its day decides which rules hold.', type: 'date', value: this.know_.today }),
            choiceField({ key: 'region', label: 'Sold in', options: [['', 'Not told'], ...this.know_.markets.map(({ market, name }) => [market, name])] })];
        this.attributes_ = this.attributesOf_(texts);
        this.form_ = new Form({ sample: this.sample_, title: listing ? 'The text of the listing' : 'Begin the listing', heading: 'h3', saveText: 'Save the listing',
                                changes: () => this.changes_(), check: () => this.attributes_.check(),
                                away: () => this.close_(), saved: () => { this.close_(); tell('Saved: the listing.'); } });
        const { digest } = listing ?? {};
        this.form_.show(digest ? element('p', { class: 'quiet' }, 'The file holds a digest of the listing as it was captured: another text will not fit it.') : null,
                        this.fields_(), [this.texts_.map(({ node }) => node), this.attributes_.node, this.capture_.map(({ node }) => node)]);
        this.open_.hidden = true;
        this.place_.replaceChildren(this.form_.node);
        this.form_.title.focus();
        this.form_.node.scrollIntoView({ block: 'nearest' });
        // What is on record is marked before the first key is pressed.
        this.show(...this.shown_);
    }

    attributesOf_(texts) {
        const known = [...texts].filter(([field]) => field.startsWith(kProperty)).map(([field, text]) => [field.slice(kProperty.length), text]);
        let count = 0;
        return new NamedFields({
            known, addText: 'Add an attribute', nameless: 'This attribute has no name yet.', twice: (name) => `There is an attribute \u201c${name}\u201d already.`,
            makeName: () => { count += 1; return textField({ key: `name of attribute ${count}`, label: 'Attribute', hint: 'Such as Lining or Hardware' }); },
            makeText: (name, text) => listingTextField({ key: name, label: name || 'Its text', value: text }),
            changed: () => { this.form_.hold(this.fields_()); this.form_.typed(); },
        });
    }

    fields_() { return [...this.capture_, ...this.texts_, ...this.attributes_.fields]; }

    fieldsByName_() {
        return [...this.texts_.map((field) => [field.key, field]), ...this.attributes_.named.map(([name, field]) => [kProperty + name, field])];
    }

    changes_() {
        const set = (key, value) => ({ do: 'set', of: 'listing', key, value });
        const texts = [...this.texts_.filter((field) => field.value !== this.before_.get(field)).map((field) => set(field.key, field.value)),
                       ...this.attributes_.changes.map(([name, text]) => set(kProperty + name, text))];
        if (texts.length === 0) return null;
        return [...this.capture_.filter(({ value }) => value !== '').map(({ key, value }) => set(key, value)), ...texts];
    }

    close_() {
        this.form_ = undefined;
        this.place_.replaceChildren();
        this.open_.hidden = false;
        this.open_.focus();
    }
}
