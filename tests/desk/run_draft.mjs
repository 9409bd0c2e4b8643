// A draft with the pointer: kept over a reload, checked for several markets, its marks pressed, all wordings taken at once, copied,
// and made a sample that is sold where the draft was checked for. And what the bar tells of a step back.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { until } from './until.mjs';

const kDraft = `Tote in vegan leather, waterproof
Lining: PU leather. Made in Italy. No PVC.`;
const kPhone = { width: 360, height: 740 };

async function type(page, text) {
    await page.locator('#listing-text').fill(text);
    await until(page, () => document.querySelector('.layer mark') && document.querySelector('details.finding'));
}

async function runKept(page) {
    await type(page, kDraft);
    const market = page.locator('.markets select').first();
    assert.match(await market.locator('option').first().textContent(), /None chosen: only rules that hold everywhere/);
    assert.equal(await page.getByRole('button', { name: 'Another market' }).count(), 0, 'none is chosen yet');
    const asked = page.waitForRequest((request) => request.url().endsWith('/words') && request.postDataJSON().market.length === 2);
    await market.selectOption('eu');
    await page.getByRole('button', { name: 'Another market' }).click();
    await page.getByLabel('Also').selectOption('us');
    assert.deepEqual((await asked).postDataJSON().market, ['eu', 'us']);
    await page.getByLabel('Sort of goods').selectOption('bag');
    await page.reload();
    await page.waitForSelector('.layer mark');
    assert.equal(await page.inputValue('#listing-text'), kDraft, 'a reload keeps the draft');
    assert.deepEqual(await page.locator('.markets select').evaluateAll((all) => all.map(({ value }) => value)), ['eu', 'us']);
    assert.equal(await page.getByLabel('Sort of goods').inputValue(), 'bag');
}

// What is said, and why some of it has no wording to take.
async function runReasons(page) {
    const said = page.locator('.said li');
    await page.waitForSelector('.said li:has-text("Made in Italy")');
    assert.match((await said.allTextContents()).join('|'), /PVC, denied: not PVC/);
    const plain = page.locator('details.finding', { hasText: 'waterproof' }).first();
    await plain.locator('summary').click();
    assert.match(await plain.textContent(), /No wording to take: what would be true cannot be known/);
}

async function runPressed(page, look) {
    await page.evaluate(() => window.scrollTo(0, 0));
    const mark = await page.locator('.layer mark', { hasText: 'vegan leather' }).boundingBox();
    await page.mouse.click(mark.x + mark.width / 2, mark.y + mark.height / 2);
    assert.equal(await page.evaluate(() => document.activeElement.id), 'listing-text', 'one may go on typing');
    await page.waitForSelector('.offer button');
    await look('draft-pressed');
    await page.locator('.offer button').click();
    const opened = await page.evaluate(() => [document.activeElement.textContent, document.activeElement.parentElement.open]);
    assert.match(opened[0], /vegan leather/);
    assert.ok(opened[1], 'its finding is open');
    assert.equal(await page.locator('.offer button').count(), 0);
}

async function runAll(page) {
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    const button = page.getByRole('button', { name: /^Take every wording that fits: \d+$/ });
    const count = Number((await button.textContent()).match(/\d+/)[0]);
    assert.ok(count >= 2, `${count}`);
    await button.click();
    await page.waitForSelector('.told:has-text("written")');
    const written = await page.inputValue('#listing-text');
    assert.doesNotMatch(written, /vegan leather|PU leather/);
    await until(page, () => ![...document.querySelectorAll('button')].some(({ hidden, textContent }) => !hidden && /^Take every/.test(textContent)));
    await page.getByRole('button', { name: 'Copy the text' }).click();
    await page.waitForSelector('.told:has-text("copied")');
    assert.equal(await page.evaluate(() => navigator.clipboard.readText()), written);
    await page.locator('#listing-text').focus();
    await page.keyboard.press('Control+z');
    assert.equal(await page.inputValue('#listing-text'), kDraft, 'one step takes all of it back');

    // Which of two statements is true only a person knows: its wording is taken one by one.
    await type(page, 'Tote in vegan leather. Made in Italy. Assembled in Spain.');
    const doubtful = page.locator('details.finding', { hasText: 'It takes' }).first();
    await doubtful.waitFor({ state: 'attached' });
    assert.match(await doubtful.textContent(), /It takes .* as true: whether that is so, you have to know/);
    const taken = await page.evaluate(async () => {
        const answer = await (await fetch('/words', { method: 'POST', headers: { 'Content-Type': 'application/json' },
                                                      body: JSON.stringify({ text: document.getElementById('listing-text').value, market: ['eu', 'us'] }) })).json();
        return answer.findings.filter(({ edit }) => edit?.taken_as_true).map(({ words }) => words);
    });
    assert.ok(taken.length > 0);
    await button.click();
    await until(page, () => document.getElementById('listing-text').value.includes('imitation leather'));
    const kept = await page.inputValue('#listing-text');
    for (const words of taken) assert.ok(kept.includes(words), `${words} in ${kept}`);
}

// The wording is one word beside those that go; it is told with what follows it.
async function runBeside(page) {
    await type(page, 'Made in Italy, sewn in Vietnam, from calf.');
    const better = page.locator('details.finding', { hasText: 'Made in Italy' }).locator('.instead').first();
    await better.waitFor({ state: 'attached' });
    assert.equal(await better.textContent(), 'Better: Sewn in Vietnam (leave the words out)');
}

async function runKeptAsSample(page, folder, look) {
    await type(page, 'Harbour tote in vegan leather\nSewn by hand.');
    await page.getByLabel('Also').selectOption('');
    await page.getByRole('button', { name: 'Keep it as a sample' }).click();
    await page.waitForSelector('#new-sample');
    assert.equal(await page.getByLabel('Sold in').inputValue(), 'eu', 'the market of the draft');
    // A name is proposed after a press on Begin that failed as well, until one is written.
    const [what, name] = [page.getByLabel(/^What it is/), page.getByLabel(/^File name/)];
    await what.fill('');
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await what.fill('Harbour tote, \u00e9t\u00e9');
    assert.equal(await name.inputValue(), 'harbour-tote-ete');
    assert.equal(await page.locator('.one-field .fault:not(:empty)').count(), 0, 'what was wrong is mended');
    await look('draft-kept');
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await page.waitForSelector('#costs');
    const file = join(folder, 'harbour-tote-ete.yaml');
    assert.match(readFileSync(file, 'utf8'), /^ {2}region: eu$/m);

    // A step back tells what it took back; a message goes when one goes on.
    await page.getByRole('button', { name: 'Change these facts' }).click();
    await page.getByLabel('Seller').fill('A stall');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.waitForSelector('.told:has-text("Saved: facts")');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.waitForSelector('.told:has-text("Undone: facts of the sample.")');
    await page.getByRole('link', { name: 'Check a draft' }).click();
    await page.waitForSelector('#listing-text');
    assert.equal(await page.locator('.told.seen').count(), 0, 'what was told of another sheet is gone');
    await page.goBack();
    await page.waitForSelector('#costs');
    await page.setViewportSize(kPhone);
    const link = await page.getByRole('link', { name: 'Check a draft' }).boundingBox();
    assert.ok(link && link.width > 80, 'the way to a draft is there on a phone, too');
}

export async function runDraft(page, folder, look) {
    await page.goto(`${new URL(page.url()).origin}/#/words`);
    await page.waitForSelector('#listing-text');
    await runKept(page);
    await runReasons(page);
    await runPressed(page, look);
    await runAll(page);
    await runBeside(page);
    await runKeptAsSample(page, folder, look);
    console.log('draft: kept, for two markets, pressed, all taken, copied, a sample of it');
}
