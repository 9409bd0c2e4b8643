// What forms tell while one types: nothing follows from what cannot be read, each fault stands at its field as sentences of its
// own, and materials are chosen by the words that people write for them.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { until } from './until.mjs';

const kSample = `sample: {what: Tote bag}
listing: {captured: 2026-09-01, name: Leather tote 1.2 mm thick, description: 'Body: full grain leather, 1.2 mm thick.'}
parts:
  body: {readings: [{method: water-drop, outcome: stands, date: 2026-09-10}]}
  hardware: {readings: [{method: magnet, outcome: no-pull, date: 2026-09-10}]}
`;

function hasEffect(page, text) {
    return until(page, (wanted) => document.querySelector('.form .effect').textContent.includes(wanted), text);
}

// A quantity that follows, one that does not, and one that is typed first and lacks something.
async function runQuantity(page) {
    await page.getByRole('button', { name: 'Record a test: Body' }).click();
    await page.getByLabel('Test', { exact: true }).selectOption('thickness-gauge');
    const field = page.locator('.form').getByLabel(/^Thickness/);
    await field.fill('1.05');
    await hasEffect(page, 'Nothing follows from this yet. ');
    await hasEffect(page, 'uncertainty');
    await field.fill('1.21 \u00b1 0.02');
    await hasEffect(page, 'With this, ');
    await field.fill('abc');
    await hasEffect(page, 'Nothing follows from this yet.');
    assert.doesNotMatch(await page.locator('.form .effect').textContent(), /With this/, 'what followed from another value is gone');
    assert.equal(await page.locator('.finding .was').count(), 0, 'on the sheet as well');
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await until(page, () => document.querySelector('.form [aria-invalid]') !== null);
    const fault = await page.locator('.one-field .fault:not(:empty)').textContent();
    assert.match(fault, /is not a quantity\. Write /, 'a stop between what is wrong and what to do');
    assert.equal(await page.locator('.form .effect').textContent(), 'Nothing follows from this yet.', 'the fault is told once');
    await page.getByRole('button', { name: 'Put it away' }).click();
}

async function runComposition(page) {
    await page.getByRole('button', { name: 'Record a test: Hardware' }).click();
    await page.getByLabel('Test', { exact: true }).selectOption('xrf-filed');
    const field = page.locator('.form').getByLabel(/^Composition/);
    for (const text of ['Zn 95.4%', 'Zn: 95.4 \u00b1 0.6 %, Al: 4x']) {
        await field.fill(text);
        await field.press('Tab');
        await until(page, () => document.querySelector('.form [aria-invalid]') !== null);
        assert.equal(await page.locator('.form [aria-invalid]').inputValue(), text, 'the fault is at the field');
        await field.fill('');
        await until(page, () => document.querySelector('.form [aria-invalid]') === null);
    }
    await page.getByRole('button', { name: 'Put it away' }).click();
}

// A line in no currency, of a material by its name.
async function runMaterial(page, file) {
    await page.getByRole('button', { name: 'Add a line' }).click();
    const form = page.locator('.form');
    await form.getByLabel('Counted').selectOption('amount');
    await form.getByLabel('Amount').fill('45.00 EUR');
    const material = form.getByLabel('Material');
    const offered = await material.evaluate(({ list }) => [...list.options].map(({ value }) => value));
    assert.ok(offered.includes('full grain leather') && offered.includes('calf leather'), `${offered.length} are offered`);
    await material.fill('leather full grain');
    await page.getByRole('button', { name: 'Save the line' }).click();
    await until(page, () => /There is no concept/.test(document.querySelector('.one-field:has([list]) .fault').textContent));
    await material.fill('Full grain leather');
    await page.getByRole('button', { name: 'Choose the currency of the totals' }).click();
    await page.locator('.form').getByLabel('Totals stand in').selectOption('EUR');
    await page.getByRole('button', { name: 'Save rates and tax' }).click();
    await page.waitForSelector('.told:has-text("Saved: rates and tax")');
    await page.getByRole('button', { name: 'Save the line' }).click();
    await page.waitForSelector('.cost-group li:has-text("Material full grain leather")');
    assert.match(readFileSync(file, 'utf8'), /material: full-grain-leather/);
}

export async function runForms(page, folder, look) {
    const file = join(folder, 'forms.yaml');
    writeFileSync(file, kSample);
    await page.goto(`${new URL(page.url()).origin}/#/sample/forms`);
    await page.waitForSelector('.reading');
    await runQuantity(page);
    await runComposition(page);
    await runMaterial(page, file);
    await look('forms');
    console.log('forms: what cannot be read, a composition, a material by its name');
}
