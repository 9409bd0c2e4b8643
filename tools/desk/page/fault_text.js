// What is wrong, as sentences: what it is, then what can be done about it.
import { capital } from './numbers.js';

function sentence(text) {
    return /[.!?]$/.test(text) ? capital(text) : `${capital(text)}.`;
}

export function faultText({ message, hint }) {
    return [message, hint].filter(Boolean).map(sentence).join(' ');
}
