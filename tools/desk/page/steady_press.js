// A press lasts from the mouse going down to its going up, and answers come in meanwhile. What is pressed may be moved by
// them from under the mouse, or drawn again: a browser then presses nothing, and says nothing. Here it is pressed all the same.

const kPressed = 'button, summary, a[href], label, mark';
const kTremble = 12;  // CSS pixels; whoever pulls further away before letting go has thought better of it

let press;  // {node, pointer, x, y} of the press that lasts
let late = [];

function isFar({ x, y }, { clientX, clientY }) { return Math.hypot(clientX - x, clientY - y) > kTremble; }

function began({ target, button, pointerId, clientX, clientY }) {
    const node = button === 0 ? target.closest(kPressed) : null;
    if (!node) return;
    press = { node, pointer: pointerId, x: clientX, y: clientY };
    // Where it goes up is then where it went down, wherever that stands by now.
    node.setPointerCapture(pointerId);
}

function moved(event) {
    if (!press || !isFar(press, event) || !press.node.hasPointerCapture(press.pointer)) return;
    press.node.releasePointerCapture(press.pointer);
}

function ended() {
    if (!press) return;
    press = undefined;
    // The click comes first, right behind this.
    setTimeout(() => {
        const deeds = late;
        late = [];
        for (const deed of deeds) deed();
    });
}

// To be called once for the document.
export function steadyPresses(root) {
    root.addEventListener('pointerdown', began);
    root.addEventListener('pointermove', moved);
    root.addEventListener('pointerup', ended);
    root.addEventListener('pointercancel', ended);
}

export function isPressedIn(region) { return press !== undefined && region.contains(press.node); }

// Runs `deed` when the press that lasts has ended and done what it does.
export function afterPress(deed) { late.push(deed); }
