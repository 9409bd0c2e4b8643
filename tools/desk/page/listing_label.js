// The listing as it was captured, like a label on the sample: its fields with the judged words marked and numbered. A
// number leads to what is said of those words.
import { element } from './element.js';
import { gradeClass } from './grades.js';
import { cutAtMarks } from './marked_text.js';
import { capital, spoken } from './numbers.js';

const kNames = { name: 'Title', description: 'Description', material: 'Material', category: 'Category' };
export const kProperty = 'additionalProperty.';

export function fieldName(field) {
    return kNames[field] ?? (field.startsWith(kProperty) ? field.slice(kProperty.length) : spoken(field));
}

function markedField(text, verdicts, open) {
    const numbered = new Set();
    return cutAtMarks(text, verdicts).map(({ text: words, mark }) => {
        if (!mark) return words;
        const piece = element('mark', { class: gradeClass(mark.grade), id: numbered.has(mark) ? undefined : `words-${mark.seen.number}`,
                                        click: () => open(mark) }, words);
        if (numbered.has(mark)) return piece;
        numbered.add(mark);
        return [piece, element('a', { class: 'tie', href: `#${mark.seen.id}`, 'aria-label': `${mark.seen.number}: ${mark.grade}`,
                                      'data-keep': `tie ${mark.key}`,
                                      click: (event) => { event.preventDefault(); open(mark); } }, mark.seen.number)];
    });
}

// open(verdict) leads to its card.
export function listingLabel(listing, verdicts, open) {
    if (!listing?.fields?.length) return [element('p', { class: 'quiet' }, 'No listing is on record: nothing is said of the product.')];
    const fields = listing.fields.map(({ field, text }) => [
        element('dt', {}, fieldName(field)),
        element('dd', {}, markedField(text, verdicts.filter((verdict) => verdict.field === field), open))]);
    const captured = [listing.captured ? `captured ${listing.captured}` : null, listing.region ? `sold in ${listing.region.toUpperCase()}` : null,
                      listing.file ? `from ${listing.file}` : null].filter(Boolean).join(', ');
    return [element('dl', { class: 'listing' }, fields), captured ? element('p', { class: 'quiet' }, `${capital(captured)}.`) : null];
}
