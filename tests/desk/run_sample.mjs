// A sample with the pointer: facts changed, a wording taken into the file, a picture kept, a reading changed and taken out.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { until } from './until.mjs';

// One white pixel.
const kPicture = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAsqv5WQAAAABJRU5ErkJggg==', 'base64');

export async function runSample(page, folder, name) {
    const file = join(folder, `${name}.yaml`);
    const text = () => readFileSync(file, 'utf8');
    const before = text();
    await page.goto(`${new URL(page.url()).origin}/#/sample/${name}`);
    await page.waitForSelector('.reading');

    await page.getByRole('button', { name: 'Change these facts' }).click();
    await page.getByLabel('Months in use').fill('7');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.waitForSelector('.told:has-text("Saved: facts")');
    assert.equal(text(), before.replace('months_in_use: 6', 'months_in_use: 7'), 'nothing else of the file has changed');

    // A wording of a field that is written in the file.
    const finding = page.locator('details.finding', { hasText: 'high quality PU leather' }).first();
    await finding.locator('summary').click();
    const better = await finding.locator('.instead strong').textContent();
    await finding.getByRole('button', { name: 'Write it so' }).click();
    await page.waitForSelector('.told:has-text("Written into the file")');
    assert.ok(text().includes(better) && !text().includes('high quality PU leather'));
    await page.keyboard.press('Control+z');
    await until(page, () => document.querySelector('.listing').textContent.includes('high quality PU leather'));

    // All that fit, in one step.
    const whole = text();
    const all = page.getByRole('button', { name: /^Take every wording that fits: \d+$/ });
    const count = Number((await all.textContent()).match(/\d+/)[0]);
    await all.click();
    await page.waitForSelector(`.told:has-text("${count} wordings are written")`);
    assert.ok(text() !== whole && !text().includes('high quality PU leather'));
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.waitForSelector('.told:has-text("Undone: the listing.")');
    assert.equal(text(), whole);

    // What a question leaves besides the answers shown is told too: shares add up.
    const sums = await page.locator('.belief').evaluateAll((beliefs) => beliefs.map((belief) =>
        [...belief.querySelectorAll('.share'), ...belief.querySelectorAll('.quiet')].reduce((sum, { textContent }) => sum + (/under/.test(textContent) ? 0 : Number(/(\d+) %/.exec(textContent)?.[1] ?? 0)), 0)));
    assert.ok(sums.length > 0 && sums.every((sum) => sum >= 96 && sum <= 104), `${sums}`);

    await page.getByRole('button', { name: 'Record a test: Lining' }).click();
    await page.getByLabel('Test', { exact: true }).selectOption('back-side');
    await page.locator('.form .pick', { hasText: 'a weave or a knit' }).click();
    await page.getByLabel('Choose a picture').setInputFiles({ name: '../../up & away.png', mimeType: 'image/png', buffer: kPicture });
    await until(page, () => [...document.querySelectorAll('.form input[type=text]')].some(({ value }) => value.endsWith('.png')));
    await page.getByRole('button', { name: 'Save the reading' }).click();
    const line = page.locator('.reading', { hasText: 'The back of the sheet: a weave or a knit' });
    const link = line.locator('a').last();
    const photo = (await link.textContent()).replace('picture ', '');
    assert.ok(existsSync(join(folder, photo)) && text().includes(photo), photo);
    const shown = await page.request.get(new URL(await link.getAttribute('href'), page.url()).href);
    assert.equal(shown.headers()['content-type'], 'image/png');

    await line.last().getByRole('button', { name: /^Change/ }).click();
    await page.locator('.form').getByLabel('Note').fill('under the zip pocket');
    await page.getByRole('button', { name: 'Save the reading' }).click();
    const changed = page.locator('.reading', { hasText: 'under the zip pocket' });
    await changed.getByRole('button', { name: /^Change/ }).click();
    await page.getByRole('button', { name: 'Take it out' }).click();
    await until(page, () => ![...document.querySelectorAll('.reading')].some(({ textContent }) => textContent.includes('under the zip pocket')));
    assert.equal(await page.locator('.form').count(), 0, 'its form is gone with it');
    console.log('sample: facts, wording, picture, reading');
}
