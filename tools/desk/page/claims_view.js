// What a text says, gathered by part: a card a part, in it each claim once with the words that make it, and the findings
// on it, worst first where it counts: claims that have a finding stand before those that have none.
import { element } from './element.js';
import { findingCard } from './finding_card.js';
import { counted } from './numbers.js';
import { redrawn } from './redrawn.js';

// Where things stand changes with every key; what they say does not. Cards are drawn again for the latter only.
function placeless({ at, start, end, edit, ...rest }) {
    return edit ? { ...rest, edit: { wording: edit.wording, reads: edit.reads, taken_as_true: edit.taken_as_true } } : rest;
}

function claimLine({ says_name: name, negated, hedged, words, times }) {
    return element('li', {}, element('q', {}, words), negated ? `, denied: not ${name}` : ` says ${name}`, hedged ? ', hedged' : null,
                   times > 1 ? `, ${counted(times, 'time')}` : null);
}

function withoutFinding(claims, findings) {
    const told = new Set(findings.map(({ says, words }) => `${says}|${words}`));
    const found = new Map();
    for (const claim of claims) {
        const key = `${claim.says_name}|${claim.words.toLowerCase()}|${claim.negated}`;
        if (told.has(`${claim.says}|${claim.words}`)) continue;
        const known = found.get(key);
        if (known) known.times += 1;
        else found.set(key, { says_name: claim.says_name, negated: claim.negated, hedged: claim.hedged, words: claim.words, times: 1 });
    }
    return [...found.values()];
}

function drawCard(name, claims, findings, deeds) {
    return [
        element('h2', { tabindex: '-1' }, name),
        element('div', { class: 'row' }, element('h3', {}, 'To mend'),
            findings.length === 0 ? element('p', { class: 'quiet' }, 'Nothing.')
                                  : element('div', {}, findings.map((finding) => findingCard(finding, deeds)))),
        claims.length === 0 ? null : element('div', { class: 'row' }, element('h3', {}, 'Said'),
                                             element('ul', { class: 'said' }, claims.map(claimLine))),
    ];
}

export class ClaimsView {
    // deeds: {take(finding), show(finding)}, as of finding_card.js.
    constructor(deeds) {
        this.deeds_ = deeds;
        this.cards_ = new Map();
        this.node = element('div', { class: 'cards' });
    }

    // `names`: words for parts, by id, in the order in which they are shown.
    show(claims, findings, names) {
        const parts = [...names.keys(), 'other'];
        const partOf = ({ part }) => (names.has(part) ? part : 'other');
        let before = null;
        for (const part of parts) {
            const said = claims.filter((claim) => partOf(claim) === part);
            const found = findings.filter((finding) => partOf(finding) === part);
            let card = this.cards_.get(part);
            if (said.length + found.length === 0) {
                card?.node.remove();
                this.cards_.delete(part);
                continue;
            }
            if (!card) {
                const node = element('section', { class: 'card', 'aria-label': names.get(part) ?? 'Other' });
                card = { node, draw: redrawn(node, (name, lines, kept) => drawCard(name, lines, kept, this.deeds_)) };
                this.cards_.set(part, card);
                if (before) before.after(node);
                else this.node.prepend(node);
            }
            card.draw(names.get(part) ?? 'Other', withoutFinding(said, found), found.map(placeless));
            before = card.node;
        }
    }

    // Opens the finding of that key and puts the focus on it.
    open(key) {
        for (const details of this.node.querySelectorAll('details.finding')) {
            if (details.dataset.keep !== `finding ${key}`) continue;
            details.open = true;
            details.querySelector('summary').focus();
        }
    }
}
