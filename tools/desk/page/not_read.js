// What cannot be told while the file has faults: that nothing is on record would not be true.
import { element } from './element.js';

export function notRead(what) {
    return element('p', { class: 'quiet' }, `${what} cannot be told now: the file has faults.`);
}
