// What the page says to a person: quietly, in a line that goes away again and that screen readers speak; or as trouble,
// which stays until it is over.
import { element } from './element.js';
import { faultText } from './fault_text.js';

const kSeen = 7000;  // ms
let passing;

export function tell(text) {
    const line = document.getElementById('told');
    speak(text);
    line.textContent = text;
    line.classList.add('seen');
    clearTimeout(passing);
    passing = setTimeout(hush, kSeen);
}

// Takes the line away before its time: it lies over the end of the sheet. Whoever goes on, by a key, a press or to another
// sheet, has read it.
export function hush() {
    document.getElementById('told').classList.remove('seen');
}

// Only for those who listen: what others see move on the sheet.
export function speak(text) {
    document.getElementById('spoken').textContent = text;
}

export function showTrouble(failure) {
    const box = document.getElementById('trouble');
    const text = faultText(failure);
    if (box.textContent === text) return;
    box.replaceChildren(element('p', {}, text));
}

export function endTrouble() {
    const box = document.getElementById('trouble');
    if (box.firstChild) box.replaceChildren();
}
