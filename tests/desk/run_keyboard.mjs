// One sitting by keyboard alone: a draft is pasted and marked, a wording taken, a sample begun, three tests recorded,
// the verdict seen to change, saved, loaded again, the report exported, and the last test undone.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hasFocus, pressAt, tabTo } from './keyboard_hand.mjs';
import { until } from './until.mjs';

const kListing = `Harrow shoulder bag in full grain leather
Body: full grain leather, edges painted by hand.
Lining: genuine vegan leather.
Hardware: solid brass.`;
const kName = 'harrow-shoulder-bag-in-full-grain-leather';

// What the card of a part says of words: their grade.
function gradeOf(page, words) {
    return page.locator('details.finding summary', { hasText: words }).first().locator('.grade').textContent();
}

// Chooses an entry of the list that has the focus, by its first letters.
async function choose(page, letters) {
    await page.keyboard.type(letters, { delay: 5 });
}

async function record(page, part, method, fill) {
    await pressAt(page, `Record a test: ${part}`);
    await hasFocus(page, 'Test', 'the list of tests has the focus');
    await choose(page, method);
    assert.match(await page.evaluate(() => document.activeElement.selectedOptions[0].text), new RegExp(`^${method}`), 'the letters choose the test');
    await fill();
}

export async function runKeyboard(page, folder) {
    await page.keyboard.press('Tab');
    await hasFocus(page, 'To the sheet');
    await pressAt(page, 'Check a draft');
    await page.waitForSelector('#listing-text');
    await tabTo(page, /^The listing/);
    await page.keyboard.insertText(kListing);
    await page.waitForSelector('.layer mark.misleading');
    const marked = await page.locator('.layer mark').allTextContents();
    assert.ok(marked.includes('genuine vegan leather'), `marked: ${marked}`);
    assert.ok(!marked.some((words) => /full grain|solid brass/.test(words)), `plain identity is not marked: ${marked}`);

    // From the words to what is said of them, and the better wording by one press.
    await page.keyboard.press('Control+Home');
    for (let i = 0; i < 2; i += 1) await page.keyboard.press('ArrowDown');
    for (let i = 0; i < 12; i += 1) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Alt+Enter');
    await hasFocus(page, /misleading.*genuine vegan leather/);
    const body = page.locator('details[open] .body');
    assert.ok((await body.locator('.because').textContent()).length > 20, 'a reason is given');
    assert.ok(await body.locator('.sources li').count() > 0, 'a source is given');
    const better = await body.locator('.instead strong').textContent();
    await pressAt(page, 'Write it so');
    const written = await page.inputValue('#listing-text');
    assert.ok(written.includes(better) && !written.includes('genuine vegan leather'), `written: ${written}`);
    await until(page, () => !document.querySelector('.layer mark.misleading'));
    // The field's own undo takes it back, and again.
    await page.keyboard.press('Control+z');
    assert.equal(await page.inputValue('#listing-text'), kListing);
    await page.keyboard.press('Control+Shift+z');
    assert.equal(await page.inputValue('#listing-text'), written);

    // A sample with that text as its listing.
    await pressAt(page, 'Keep it as a sample');
    await page.waitForSelector('#new-sample');
    await until(page, () => document.activeElement.labels?.[0]?.textContent.startsWith('What it is'));
    await tabTo(page, 'Sort of goods');
    await choose(page, 'Bag');
    await pressAt(page, 'Begin');
    await page.waitForSelector('#costs');
    assert.match(await page.title(), /^Harrow shoulder bag/);
    const file = join(folder, `${kName}.yaml`);
    assert.ok(readFileSync(file, 'utf8').includes('full grain leather'));

    // Three tests of the body.
    const before = await gradeOf(page, 'full grain leather');
    await record(page, 'Body', 'Cut edge', async () => {
        const caution = page.locator('.form .caution');
        assert.match(await caution.textContent(), /blade/, 'cautions stand in the form');
        assert.match(await page.locator('.form .harm').textContent(), /^This harms the sample: /);
        const isAbove = await page.evaluate(() => Boolean(document.querySelector('.form .caution')
            .compareDocumentPosition(document.querySelector('.form input')) & Node.DOCUMENT_POSITION_FOLLOWING));
        assert.ok(isAbove, 'cautions are read before anything can be filled in');
        await tabTo(page, 'a continuous fibre weave, densest at the top');
        for (let i = 0; i < 4; i += 1) await page.keyboard.press('ArrowDown');
        await hasFocus(page, 'yarns or a knit under a polymer coat');
        await until(page, () => [...document.querySelectorAll('.finding .was')].length > 0);
    });
    assert.notEqual(await gradeOf(page, 'full grain leather'), before, 'the verdict moves while one types');
    assert.ok(!readFileSync(file, 'utf8').includes('cut-edge'), 'and nothing is written yet');
    await pressAt(page, 'Save the reading');
    await page.waitForSelector('.reading:has-text("Cut edge")');
    await hasFocus(page, 'Record a test: Body');
    assert.equal(await gradeOf(page, 'full grain leather'), 'contradicted');

    await page.keyboard.press('Shift+Tab');
    await record(page, 'Body', 'Coat thickness', async () => {
        await tabTo(page, /^Coat/);
        await page.keyboard.insertText('0.21');
        await pressAt(page, /^Total/, 'Tab');  // leaves the field, so that what is wrong with it is told
        await until(page, () => /uncertaint|range|repeat/.test(document.querySelector('.one-field .fault:not(:empty)')?.textContent ?? ''));
        await tabTo(page, /^Coat/, { back: true });
        await page.keyboard.press('End');
        await page.keyboard.insertText(' \u00b1 0.02 mm');
        await tabTo(page, /^Total/);
        await page.keyboard.insertText('1.10 \u00b1 0.03 mm');
        await until(page, () => !document.querySelector('[aria-invalid]'));
    });
    await page.keyboard.press('Enter');  // Enter in a field saves
    await page.waitForSelector('.reading:has-text("0.21")');

    await page.keyboard.press('Shift+Tab');
    await record(page, 'Body', 'The back', async () => {
        await tabTo(page, 'rough to velvety fibres, no weave');
        await page.keyboard.press('ArrowDown');
        await hasFocus(page, 'a weave or a knit');
        await tabTo(page, /^Note/);
        await page.keyboard.insertText('at the bottom seam');
    });
    await pressAt(page, 'Save the reading');
    await page.waitForSelector('.reading:has-text("at the bottom seam")');
    const text = readFileSync(file, 'utf8');
    assert.ok(text.includes('method: cut-edge') && text.includes('0.21 \u00b1 0.02 mm') && text.includes('at the bottom seam'), text);

    await page.reload();
    await page.waitForSelector('.reading:has-text("at the bottom seam")');
    assert.equal(await page.locator('.reading:not(.quiet)').count(), 3);
    assert.equal(await gradeOf(page, 'full grain leather'), 'contradicted');

    await tabTo(page, 'Save as Markdown');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    const report = readFileSync(await download.path(), 'utf8');
    assert.match(report, /contradicted/);
    assert.match(report, /not legal advice/i);
    const [opened] = await Promise.all([page.context().waitForEvent('page'), pressAt(page, 'Open the report', 'Enter', { back: true })]);
    await opened.waitForLoadState();
    assert.match(await opened.locator('body').innerText(), /Harrow shoulder bag/);
    await opened.close();

    await page.keyboard.press('Control+z');
    await until(page, () => document.querySelectorAll('.reading').length === 2);
    assert.ok(!readFileSync(file, 'utf8').includes('at the bottom seam'));
    await page.keyboard.press('Control+Shift+z');
    await page.waitForSelector('.reading:has-text("at the bottom seam")');
    await pressAt(page, 'Undo');
    await until(page, () => document.querySelectorAll('.reading').length === 2);
    console.log('keyboard: a draft to a report, and back by undo');
}
