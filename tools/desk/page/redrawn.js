// A region that is drawn again only where what it shows has changed. Typing in one place moves figures in others; what a
// person has opened there stays open, and the focus stays where it was, found again by their data-keep. While something in it
// is being pressed it stays as it is.
import { afterPress, isPressedIn } from './steady_press.js';

export function redrawn(region, draw) {
    let last;
    let waiting;  // what is to be shown when the press has ended
    const showLate = () => {
        const late = waiting;
        waiting = undefined;
        if (late) show(...late);
    };
    function show(...shown) {
        if (isPressedIn(region)) {
            if (!waiting) afterPress(showLate);
            waiting = shown;
            return;
        }
        waiting = undefined;
        const now = JSON.stringify(shown);
        if (now === last) return;
        last = now;
        const focused = region.contains(document.activeElement) ? document.activeElement.dataset.keep : undefined;
        const open = new Set([...region.querySelectorAll('details[open][data-keep]')].map((details) => details.dataset.keep));
        region.replaceChildren(...[draw(...shown)].flat(Infinity).filter(Boolean));
        for (const details of region.querySelectorAll('details[data-keep]')) {
            if (open.has(details.dataset.keep)) details.open = true;
        }
        if (focused === undefined) return;
        for (const candidate of region.querySelectorAll('[data-keep]')) {
            if (candidate.dataset.keep === focused && candidate.tagName !== 'DETAILS') {
                candidate.focus({ preventScroll: true });
                return;
            }
        }
    }
    return show;
}
