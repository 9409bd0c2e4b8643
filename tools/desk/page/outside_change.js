// The file was changed by somebody else: what it was, what it is, and the way on. What is typed in forms is kept.
import { button, element } from './element.js';
import { lineChanges, nearChanges } from './line_changes.js';
import { counted } from './numbers.js';

const kHow = { gone: ['del', 'gone: '], come: ['ins', 'new: '], kept: ['span', ''] };

function changeLine({ how, line, gap }) {
    if (gap) return element('li', { class: 'gap' }, `${counted(gap, 'line is', 'lines are')} as before`);
    const [tag, word] = kHow[how];
    return element('li', { class: how }, word ? element('b', {}, word) : null, element(tag, {}, line === '' ? '(empty line)' : line));
}

export const kTakeIt = 'Take what is on disk';

// Shows in `place` that `now` is on disk in the place of `before`; take() where it is taken. isAsked: it is the answer to
// what somebody did and gets the focus; who is typing is not interrupted.
export function showOutsideChange(place, before, now, { isTyping, isAsked, take }) {
    const hadFocus = place.contains(document.activeElement);
    const head = element('h2', { tabindex: '-1' }, 'The file was changed outside of this page');
    place.replaceChildren(element('section', { class: 'notice', 'aria-label': 'The file was changed outside' }, head,
        element('p', {}, 'Nothing was written over it. This is what changed on disk:'),
        element('ol', { class: 'changes' }, nearChanges(lineChanges(before.text, now.text)).map(changeLine)),
        element('p', {}, isTyping ? 'What you are typing stays in its form and stays as it is. To write it, take what is on disk first, then save it.'
                                  : 'Nothing that you typed is lost.'),
        element('p', { class: 'deeds' }, button(kTakeIt, take, { class: 'main' }))));
    if (isAsked || hadFocus) head.focus();
}
