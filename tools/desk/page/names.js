// Words for people in place of ids, where the server has ids only, and the order of parts on a sheet.
import { spoken } from './numbers.js';

// In the order in which one opens a product: what is said of all of it, the outside, what holds it, the inside.
const kPartOrder = ['whole', 'body', 'upper', 'trim', 'edge', 'hardware', 'zip', 'strap', 'handle', 'sole', 'lining', 'filling', 'thread'];

// What a test does to the sample, mildest first.
export const kHarms = new Map([['none', 'it leaves no trace'], ['mark', 'it leaves a mark'], ['cut', 'it takes a cut'],
                               ['destroy', 'it uses up what is tested']]);

// Materials by the words that people write for them. Words that several have name none of them.
export class MaterialNames {
    // materials: [{material, name}]
    constructor(materials) {
        const times = new Map();
        for (const { name } of materials) times.set(name, (times.get(name) ?? 0) + 1);
        this.byId_ = new Map(materials.map(({ material, name }) => [material, times.get(name) === 1 ? name : material]));
        this.byName_ = new Map([...this.byId_].map(([id, name]) => [name.toLowerCase(), id]));
        this.names = [...this.byId_.values()].sort();
    }

    nameOf(id) { return this.byId_.get(id) ?? id; }
    // What names none is given back as it is.
    idOf(name) { return this.byName_.get(name.trim().toLowerCase()) ?? name; }
}

// Words for parts by id; one that has no place in the order stands last.
export function partNames(parts) {
    const place = (part) => (kPartOrder.includes(part) ? kPartOrder.indexOf(part) : kPartOrder.length);
    return new Map([...parts].sort((a, b) => place(a) - place(b)).map((part) => [part, spoken(part)]));
}
