// Marks on a text: cutting it into pieces, painting only the pieces that changed, and moving marks along while somebody
// types and no answer has come yet. A mark is {at: [start, end], grade}, in UTF-16 units, end exclusive, sorted by start.
import { element } from './element.js';
import { gradeClass, isWorse } from './grades.js';

// Pieces {text, grade, mark?} that together are the text. Where marks overlap the worst one is seen.
export function cutAtMarks(text, marks) {
    const borders = [...new Set([0, text.length, ...marks.flatMap(({ at }) => at)])]
        .filter((place) => place >= 0 && place <= text.length).sort((a, b) => a - b);
    const pieces = [];
    let open = [];
    let next = 0;
    for (let i = 0; i + 1 < borders.length; i += 1) {
        const [start, end] = [borders[i], borders[i + 1]];
        open = open.filter(({ at }) => at[1] > start);
        for (; next < marks.length && marks[next].at[0] <= start; next += 1) {
            if (marks[next].at[1] > start) open.push(marks[next]);
        }
        const worst = open.reduce((found, mark) => (!found || isWorse(mark.grade, found.grade) ? mark : found), undefined);
        const last = pieces.at(-1);
        if (last && last.mark === worst) last.text += text.slice(start, end);
        else pieces.push({ text: text.slice(start, end), grade: worst?.grade, mark: worst });
    }
    return pieces;
}

function sameLook(one, other) {
    return one.text === other.text && one.grade === other.grade;
}

function painted({ text, grade }) {
    return grade === undefined ? document.createTextNode(text) : element('mark', { class: gradeClass(grade) }, text);
}

// A painter of a layer behind a text field. Pieces at the front and at the end that look as before keep their nodes.
export function layerPainter(layer) {
    let last = [];
    return (text, marks) => {
        // The line break keeps the layer as high as a text field whose last line is empty.
        const pieces = [...cutAtMarks(text, marks), { text: '\n', grade: undefined }];
        let front = 0;
        while (front < pieces.length && front < last.length && sameLook(pieces[front], last[front])) front += 1;
        let back = 0;
        while (back < pieces.length - front && back < last.length - front &&
               sameLook(pieces.at(-1 - back), last.at(-1 - back))) back += 1;
        for (let i = front; i < last.length - back; i += 1) layer.childNodes[front].remove();
        const behind = layer.childNodes[front] ?? null;
        for (const piece of pieces.slice(front, pieces.length - back)) layer.insertBefore(painted(piece), behind);
        last = pieces;
    };
}

// The marks after the text has become another one: those behind the edit move, those that it touches stretch or go.
export function movedMarks(marks, before, after) {
    const shorter = Math.min(before.length, after.length);
    let front = 0;
    while (front < shorter && before[front] === after[front]) front += 1;
    let back = 0;
    while (back < shorter - front && before[before.length - 1 - back] === after[after.length - 1 - back]) back += 1;
    const cut = before.length - back;
    const moved = after.length - before.length;
    return marks.map((mark) => {
        const [start, end] = mark.at;
        const at = [start >= cut ? start + moved : Math.min(start, front), end >= cut ? end + moved : Math.min(end, front)];
        return { ...mark, at };
    }).filter(({ at }) => at[1] > at[0]);
}
