// What changed between two texts, line by line: {kept|gone|come: line}. Equal lines at the front and at the end are left
// out but for a few; between them the longest common sequence decides, or, of very long stretches, all of it counts.

const kBeside = 2;         // lines shown around what changed
const kLongest = 1000000;  // comparisons

function between(before, after) {
    if (before.length * after.length > kLongest) {
        return [...before.map((line) => ({ how: 'gone', line })), ...after.map((line) => ({ how: 'come', line }))];
    }
    const lengths = Array.from({ length: before.length + 1 }, () => new Uint16Array(after.length + 1));
    for (let i = before.length - 1; i >= 0; i -= 1) {
        for (let k = after.length - 1; k >= 0; k -= 1) {
            lengths[i][k] = before[i] === after[k] ? lengths[i + 1][k + 1] + 1 : Math.max(lengths[i + 1][k], lengths[i][k + 1]);
        }
    }
    const changes = [];
    let [i, k] = [0, 0];
    while (i < before.length || k < after.length) {
        if (i < before.length && k < after.length && before[i] === after[k]) {
            changes.push({ how: 'kept', line: before[i] });
            i += 1;
            k += 1;
        } else if (k === after.length || (i < before.length && lengths[i + 1][k] >= lengths[i][k + 1])) {
            changes.push({ how: 'gone', line: before[i] });
            i += 1;
        } else {
            changes.push({ how: 'come', line: after[k] });
            k += 1;
        }
    }
    return changes;
}

// Of `changes` those that are any, with a few lines around them; {gap: lines left out} between them.
export function nearChanges(changes) {
    const isNear = changes.map((_, i) => changes.slice(Math.max(0, i - kBeside), i + kBeside + 1).some(({ how }) => how !== 'kept'));
    const near = [];
    changes.forEach((change, i) => {
        if (isNear[i]) near.push(change);
        else if (near.at(-1)?.gap) near.at(-1).gap += 1;
        else near.push({ gap: 1 });
    });
    return near;
}

export function lineChanges(textBefore, textAfter) {
    const before = textBefore.split('\n');
    const after = textAfter.split('\n');
    let front = 0;
    while (front < before.length && front < after.length && before[front] === after[front]) front += 1;
    let back = 0;
    while (back < before.length - front && back < after.length - front && before.at(-1 - back) === after.at(-1 - back)) back += 1;
    const kept = (lines) => lines.map((line) => ({ how: 'kept', line }));
    return [...kept(before.slice(Math.max(0, front - kBeside), front)),
            ...between(before.slice(front, before.length - back), after.slice(front, after.length - back)),
            ...kept(before.slice(before.length - back).slice(0, kBeside))];
}
