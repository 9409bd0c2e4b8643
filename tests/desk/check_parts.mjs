// check_parts.mjs PAGE: what of the page needs no browser, against slow and obvious counterparts on random inputs with a
// fixed seed: cutting a text at its marks, moving marks along with an edit, lines that changed, and which questions are asked.
import assert from 'node:assert/strict';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const page = (file) => import(pathToFileURL(join(resolve(process.argv[2]), file)).href);
const { cutAtMarks, movedMarks } = await page('marked_text.js');
const { lineChanges, nearChanges } = await page('line_changes.js');
const { newest } = await page('newest.js');
const { percent } = await page('numbers.js');
const { keyBefore, withUnit } = await page('field.js');
const { kGrades } = await page('grades.js');

const kRounds = 3000;
let seed = 20261126;
function below(limit) {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return Math.floor(seed / 4294967296 * limit);
}

function randomText(longest) {
    return Array.from({ length: below(longest + 1) }, () => 'ab \n\u00e9\ud83d\udc5c'[below(7)]).join('');
}

function randomMarks(text) {
    return Array.from({ length: below(5) }, () => {
        const start = below(text.length + 1);
        return { at: [start, start + below(text.length - start + 1)], grade: kGrades[below(kGrades.length)] };
    }).filter(({ at }) => at[1] > at[0]).sort((a, b) => a.at[0] - b.at[0]);
}

function checkCuts() {
    for (let round = 0; round < kRounds; round += 1) {
        const text = randomText(24);
        const marks = randomMarks(text);
        const pieces = cutAtMarks(text, marks);
        assert.equal(pieces.map((piece) => piece.text).join(''), text);
        let place = 0;
        for (const piece of pieces) {
            for (let i = 0; i < piece.text.length; i += 1, place += 1) {
                const grades = marks.filter(({ at }) => at[0] <= place && place < at[1]).map(({ grade }) => kGrades.indexOf(grade));
                assert.equal(piece.grade, grades.length ? kGrades[Math.min(...grades)] : undefined, `${JSON.stringify(text)} at ${place}`);
            }
        }
    }
}

function checkMoves() {
    let kept = 0;
    for (let round = 0; round < kRounds; round += 1) {
        const before = randomText(24);
        const start = below(before.length + 1);
        const end = start + below(before.length - start + 1);
        // What is typed occurs nowhere else, so that there is one way alone to tell the edit from the two texts.
        const typed = 'X'.repeat(1 + below(4));
        const after = before.slice(0, start) + typed + before.slice(end);
        const marks = randomMarks(before);
        const moved = movedMarks(marks, before, after);
        for (const { at } of moved) assert.ok(at[0] >= 0 && at[0] < at[1] && at[1] <= after.length);
        for (const mark of marks) {
            // A mark that the edit does not reach still marks its words.
            if (mark.at[1] >= start && mark.at[0] <= end) continue;
            const words = before.slice(...mark.at);
            assert.ok(moved.some(({ at, grade }) => grade === mark.grade && after.slice(...at) === words), `${JSON.stringify([before, after, mark])}`);
            kept += 1;
        }
    }
    return kept;
}

function checkLines() {
    for (let round = 0; round < kRounds; round += 1) {
        const [before, after] = [randomText(20), randomText(20)];
        const changes = lineChanges(before, after);
        const count = (how) => changes.filter((change) => change.how === how).length;
        assert.equal(after.split('\n').length - before.split('\n').length, count('come') - count('gone'));
        // What is shown of the old text, and of the new one, stands there in that order and without a gap.
        const side = (how) => changes.filter((change) => change.how !== how).map(({ line }) => line).join('\n');
        assert.ok(`\n${before}\n`.includes(`\n${side('come')}\n`) || side('come') === '');
        assert.ok(`\n${after}\n`.includes(`\n${side('gone')}\n`) || side('gone') === '');
        if (before === after) assert.equal(count('come') + count('gone'), 0);
        const near = nearChanges(changes);
        assert.equal(near.reduce((sum, { gap }) => sum + (gap ?? 1), 0), changes.length, 'each line is shown or counted');
        assert.deepEqual(near.filter(({ how }) => how && how !== 'kept'), changes.filter(({ how }) => how !== 'kept'), 'each change is shown');
    }
    assert.deepEqual(lineChanges('a\nb\nc', 'a\nx\nc').map(({ how, line }) => `${how} ${line}`), ['kept a', 'gone b', 'come x', 'kept c']);
    assert.deepEqual(nearChanges(lineChanges('a\nb\nc\nd\ne\nf\ng\nh', 'x\nb\nc\nd\ne\nf\ng\ny')).map(({ how, line, gap }) => (gap ? `gap ${gap}` : `${how} ${line}`)),
                     ['gone a', 'come x', 'kept b', 'kept c', 'gap 2', 'kept f', 'kept g', 'gone h', 'come y']);
}

async function checkAsking() {
    const asked = [];
    const answered = [];
    const open = [];
    const put = newest((question) => {
        asked.push(question);
        return new Promise((done, refuse) => { open.push({ done, refuse }); });
    }, (answer, question) => answered.push(`${question} ${answer}`), (failure, question) => answered.push(`${question} failed`));
    const rest = () => new Promise((done) => { setTimeout(done); });
    put('a'); put('b'); put('c');
    assert.deepEqual(asked, ['a'], 'one at a time');
    open[0].done('1');
    await rest();
    assert.deepEqual(asked, ['a', 'c'], 'then the newest alone');
    open[1].refuse(new Error());
    await rest();
    put('d');
    put.stop();
    open[2].done('2');
    await rest();
    assert.deepEqual(answered, ['a 1', 'c failed'], 'what was stopped is not handed on');
    put('e');
    await new Promise((done) => { setTimeout(done, 300); });
    put('f');
    assert.deepEqual(asked.slice(-2), ['e', 'f'], 'an answer that takes too long is not waited for');
    open[3].done('3');
    open[4].done('4');
    await rest();
    assert.deepEqual(answered.slice(2), ['f 4'], 'nor used when it comes after all');
    put('g');
    put.pause();
    open[5].done('5');
    await rest();
    assert.deepEqual(answered.slice(3), [], 'what was called back is not handed on');
    put.resume();
    assert.deepEqual(asked.slice(-2), ['g', 'g'], 'and asked again');
    put.pause();
    put('h');
    put.resume();
    assert.equal(asked.at(-1), 'h', 'unless something newer came up meanwhile');
    put.pause();
    put.stop();
    put.resume();
    assert.equal(asked.at(-1), 'h', 'what was stopped is forgotten');
    put.pause();
    put.resume();
    assert.equal(asked.length, 8, 'nor is anything asked of nothing');
}

function checkNumbers() {
    for (const [share, text] of [[0, 'under 1 %'], [0.004, 'under 1 %'], [0.0101, '1 %'], [0.93, '93 %'], [0.98999, '99 %'], [0.9999, 'over 99 %'], [1, 'over 99 %']]) {
        assert.equal(percent(share), text);
    }
}

function checkUnits() {
    for (const [text, unit, want] of [
        ['0.21 \u00b1 0.02', 'mm', '0.21 \u00b1 0.02 mm'], ['2.18, 2.22', 'mm', '2.18, 2.22 mm'], ['exactly 5', 'months', 'exactly 5 months'],
        ['0.21 \u00b1 0.02 (k=1)', 'mm', '0.21 \u00b1 0.02 mm (k=1)'], ['0.21 \u00b1 0.02 in', 'mm', '0.21 \u00b1 0.02 in'], ['1.2-1.4', 'mm', '1.2-1.4 mm'],
        ['21 \u00b0C', '\u00b0C', '21 \u00b0C'], ['95 %', '%', '95 %'], ['exactly 6000', undefined, 'exactly 6000'], ['', 'mm', ''], ['\u00b1', 'mm', '\u00b1'],
    ]) assert.equal(withUnit(text, unit), want);
}

// The key that a fault's place belongs to.
function checkKeys() {
    const text = `parts:
  hardware:
    readings:
      - method: xrf-filed
        composition:
          Zn: 95.4 \u00b1 0.6 %
          Al: 4x
        date: 2026-09-10
      - {method: xrf-filed, composition: {Zn: 1 %, Al: 4x}, date: 2026}
`;
    const keys = ['method', 'composition', 'date'];
    for (const [line, column, key] of [[4, 17, 'method'], [4, 9, undefined], [5, 9, 'composition'], [7, 15, 'composition'], [8, 15, 'date'], [9, 52, 'composition'], [9, 65, 'date'],
                                       [3, 5, undefined], [99, 1, undefined], [0, 0, undefined]]) {
        assert.equal(keyBefore({ line, column }, text, keys), key, `${line}:${column}`);
    }
}

checkUnits();
checkKeys();
checkCuts();
const kept = checkMoves();
assert.ok(kept > kRounds / 4, `${kept} marks lay beside the edit`);
checkLines();
checkNumbers();
await checkAsking();
console.log(`parts: ${kRounds} texts each, ${kept} marks moved along, 0 differences`);
