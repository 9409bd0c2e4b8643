// What a part is believed to be, by each question of the book that was asked of it. Shares are told in words and figures;
// the bar repeats them.
import { element } from './element.js';
import { capital, percent } from './numbers.js';

const kShown = 4;         // candidates of a question
const kLeastShown = 0.01;  // of belief

function shareOf(beliefs, frame, name) {
    return beliefs?.find((belief) => belief.frame === frame)?.candidates.find((candidate) => candidate.name === name)?.probability;
}

function candidateLine({ name, probability }, was) {
    const bar = element('span', { class: 'bar-of', 'aria-hidden': 'true' });
    bar.style.setProperty('--share', probability.toFixed(4));
    const hasMoved = was !== undefined && percent(was) !== percent(probability);
    return element('li', {}, element('span', {}, name, ' ', element('span', { class: 'share' }, percent(probability)),
                                     hasMoved ? element('span', { class: 'was' }, ` was ${percent(was)}`) : null), bar);
}

// `tests`: how many there are, with what is being typed; `before`: the beliefs without that.
export function beliefsView(beliefs, tests, before) {
    if (beliefs.length === 0) {
        return element('p', { class: 'quiet' }, tests === 0 ? 'Nothing yet: no test of it is on record.'
            : `Nothing yet: ${tests === 1 ? 'the test on record tells' : 'the tests on record tell'} nothing of what it is made of.`);
    }
    return beliefs.map(({ frame, asks, candidates, contradictory }) => {
        const seen = candidates.filter(({ probability }) => probability >= kLeastShown).slice(0, kShown);
        const rest = 1 - (seen.length ? seen : candidates.slice(0, 1)).reduce((sum, { probability }) => sum + probability, 0);
        return element('div', { class: 'belief' }, element('h4', {}, capital(asks)),
            element('ol', {}, (seen.length ? seen : candidates.slice(0, 1)).map((candidate) =>
                candidateLine(candidate, before ? shareOf(before, frame, candidate.name) ?? 0 : undefined))),
            rest >= kLeastShown ? element('p', { class: 'quiet' }, `Others together: ${percent(rest)}`) : null,
            contradictory ? element('p', { class: 'caution' }, 'Its readings contradict one another: look at them again.') : null);
    });
}
