// The tests that would tell most about what is open, in the order in which to make them.
import { button, element } from './element.js';
import { capital, counted } from './numbers.js';

const kShown = 2;  // of a part
const kWho = { anyone: 'anyone can do it', practised: 'by a practised hand', laboratory: 'by a laboratory' };

export function effortOf({ minutes, cost, who }) {
    return [counted(Math.round(minutes), 'minute'), cost > 0 ? `about ${Math.round(cost)} euro` : null, kWho[who] ?? who].filter(Boolean).join(', ');
}

// `harms`: words for people, by id; record(test) opens its form.
export function plannedTest(test, harms, record, where = '') {
    return element('div', { class: 'planned' },
        element('div', {}, element('p', {}, element('strong', {}, test.title), where, test.next ? ' (do this one first)' : null),
            element('p', {}, `Tells about ${test.about.join(', ')}. ${capital(effortOf(test))}.`),
            element('p', { class: test.harm === 'none' ? 'quiet' : 'harm' }, `${capital(harms.get(test.harm) ?? test.harm)}.`)),
        button('Record it', () => record(test), { 'data-keep': `record ${test.part} ${test.method}`, 'aria-label': `Record it: ${test.title}${where}` }));
}

// Why no test is planned; `of`: of it. Without a listing nothing is claimed, so nothing is open.
export function noTestText(hasListing, of = '') {
    return hasListing ? `No test${of} would tell more about what is open.` : 'Nothing is open yet: begin the listing, and what it claims can be tested.';
}

export function planView(plan, hasListing, harms, record) {
    if (plan.length === 0) return element('p', { class: 'quiet' }, noTestText(hasListing, ' of it'));
    return plan.slice(0, kShown).map((test) => plannedTest(test, harms, record));
}
