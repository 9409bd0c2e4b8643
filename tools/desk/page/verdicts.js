// The verdicts of a sample as its sheet shows them: numbered in the order of the listing, each with the grade that it has on
// disk where what is typed gives it another.
import { element } from './element.js';
import { keyed } from './finding_card.js';
import { gradeTag, kGrades } from './grades.js';
import { counted } from './numbers.js';

// "11 claims: 2 contradicted, 3 misleading": worst first.
export function countGrades(verdicts) {
    const counts = kGrades.map((grade) => [grade, verdicts.filter((verdict) => verdict.grade === grade).length]).filter(([, count]) => count > 0);
    if (counts.length === 0) return null;
    return element('p', { class: 'sum' }, `${counted(verdicts.length, 'claim')}: `, counts.map(([grade, count], i) => [i ? ', ' : null, `${count} `, gradeTag(grade)]), '.');
}

function placeOf({ field, at, says }) { return `${field}|${at[0]}|${at[1]}|${says}`; }

// `shown`: the state with what is typed; `saved`: as on disk. Each verdict gets `seen` {number, id, was} and canTake: its
// words stand in the dossier's own file.
export function numberedVerdicts(shown, saved) {
    const before = new Map((saved.verdicts ?? []).map((verdict) => [placeOf(verdict), verdict.grade]));
    const fields = shown.listing?.fields ?? [];
    const editable = new Set(fields.filter(({ editable: can }) => can).map(({ field }) => field));
    const order = new Map(fields.map(({ field }, i) => [field, i]));
    const sorted = [...(shown.verdicts ?? [])].sort((a, b) => (order.get(a.field) ?? order.size) - (order.get(b.field) ?? order.size) || a.at[0] - b.at[0]);
    return keyed(sorted).map((verdict, i) => {
        const was = before.get(placeOf(verdict));
        return { ...verdict, canTake: editable.has(verdict.field),
                 seen: { number: i + 1, id: `verdict-${i + 1}`, was: was && was !== verdict.grade ? was : undefined } };
    });
}
