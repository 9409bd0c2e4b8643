// Grades: told by their word and by a shape of underline (desk.css); colour only repeats it.
import { element } from './element.js';

// Worst first.
export const kGrades = ['contradicted', 'misleading', 'unsupported', 'inconclusive', 'vague', 'consistent'];

// The style of a grade; one that this page does not know has none.
export function gradeClass(grade) {
    return kGrades.includes(grade) ? grade : '';
}

export function isWorse(one, other) {
    return kGrades.indexOf(one) < kGrades.indexOf(other);
}

export function gradeTag(grade) {
    return element('span', { class: `grade ${gradeClass(grade)}` }, grade);
}
