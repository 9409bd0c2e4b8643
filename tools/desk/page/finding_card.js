// One finding: its grade and words, and what opens below them: the reason, the source, better wording with one press to
// take it over, and the way back to the words in the text.
import { button, element } from './element.js';
import { gradeTag } from './grades.js';
import { percent } from './numbers.js';

function sourceList(sources) {
    if (!sources?.length) return null;
    return element('div', { class: 'sources' }, element('p', { class: 'head' }, sources.length === 1 ? 'Source' : 'Sources'),
                   element('ul', {}, sources.map(({ cite, from_memory: isRemembered }) => element('li', {}, cite,
                       isRemembered ? ' (from memory)' : null))));
}

function demands(wanted) {
    if (!wanted?.length) return null;
    return element('div', {}, element('p', { class: 'head' }, 'What would support it'),
                   element('ul', {}, wanted.map((demand) => element('li', {},
                       [demand.standard, demand.number].filter(Boolean).join(': '), demand.of ? ` (${demand.of})` : null))));
}

function evidence(finding) {
    if (finding.probability === undefined) return null;
    const shares = [['true', finding.probability], ['false', finding.probability_false], ['open', finding.probability_open]];
    return element('p', { class: 'shares' }, 'By the readings this is ', shares.map(([word, share], i) =>
        `${i ? ', ' : ''}${word} ${percent(share)}`), '.', finding.contradictory ? ' Its readings contradict one another.' : null);
}

// What keeps a wording from being taken by one press, or what a person has to know before that.
function whyNoWording({ edit, no_edit: whyNot }, take) {
    if (edit?.taken_as_true) return element('p', {}, 'It takes ', element('q', {}, edit.taken_as_true), ' as true: whether that is so, you have to know.');
    if (edit && !take) return element('p', { class: 'quiet' }, 'It stands in a file that the desk does not change.');
    return whyNot ? element('p', { class: 'quiet' }, `No wording to take: ${whyNot}.`) : null;
}

// What opens: `take(finding)` where wording can be taken over (it has an edit that fits its place), `show(finding)` where its words can be shown.
export function findingBody(finding, { take, show }) {
    const better = finding.edit?.wording ?? finding.say_instead;
    const reads = finding.edit?.reads;
    const says = finding.says_name && finding.says_name.toLowerCase() !== finding.words.toLowerCase() ? finding.says_name : undefined;
    return element('div', { class: 'body' },
        element('p', { class: 'because' }, finding.because),
        says ? element('p', { class: 'quiet' }, `Read as: ${finding.negated ? 'not ' : ''}${says}.`) : null,
        finding.against ? element('p', {}, 'It disagrees with ', element('q', {}, finding.against.words), '.') : null,
        evidence(finding),
        better !== undefined ? element('p', { class: 'instead' }, 'Better: ', element('strong', {}, reads || better || '(leave the words out)'),
                                       reads ? ' (leave the words out)' : null) : null,
        whyNoWording(finding, take),
        finding.remedy ? element('p', {}, finding.remedy) : null,
        element('p', { class: 'deeds' },
            finding.edit && take ? button('Write it so', () => take(finding), { class: 'main', 'data-keep': `take ${finding.key}` }) : null,
            show ? button('Show the words', () => show(finding), { 'data-keep': `show ${finding.key}` }) : null),
        finding.would_change?.length ? element('div', {}, element('p', { class: 'head' }, 'What would change it'),
            element('ul', {}, finding.would_change.map((text) => element('li', {}, text)))) : null,
        demands(finding.would_support), sourceList(finding.cited));
}

// The line that opens it. `was`: the grade before what is being typed, where it is another; `number`: its tag in the text.
export function findingLine(finding, { number, was } = {}) {
    return element('summary', { 'data-keep': `line ${finding.key}` },
        number === undefined ? null : element('span', { class: 'number' }, element('span', { class: 'aside' }, 'Words '), number),
        ' ', gradeTag(finding.grade), was ? element('span', { class: 'was' }, ` was ${was} `) : null,
        ' ', element('q', { class: 'words' }, finding.words));
}

export function findingCard(finding, deeds, seen = {}) {
    return element('details', { class: 'finding', 'data-keep': `finding ${finding.key}`, id: seen.id },
                   findingLine(finding, seen), findingBody(finding, deeds));
}

// Gives each finding a key that stays its own while the text around it changes.
export function keyed(findings) {
    const seen = new Map();
    return findings.map((finding) => {
        const plain = [finding.field, finding.part, finding.says, finding.rule, finding.words].join('|');
        const count = (seen.get(plain) ?? 0) + 1;
        seen.set(plain, count);
        return { ...finding, key: `${plain}|${count}` };
    });
}
