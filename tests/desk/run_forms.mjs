// What forms tell while one types: nothing follows from what cannot be read, each fault stands at its field as sentences of its
// own, and materials are chosen by the words that people write for them.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hold } from './hold.mjs';
import { until } from './until.mjs';

const kSample = `sample: {what: Tote bag}
listing: {captured: 2026-09-01, name: Leather tote 1.2 mm thick, description: 'Body: full grain leather, 1.2 mm thick.'}
parts:
  body: {readings: [{method: water-drop, outcome: stands, date: 2026-09-10}]}
  hardware: {readings: [{method: magnet, outcome: no-pull, date: 2026-09-10}]}
  lining: {readings: [{method: loupe, outcome: weave, date: 2026-09-10}]}
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
    await hasEffect(page, '`abc` is not a quantity.');
    const release = await hold(page);
    await field.press('Tab');
    await until(page, () => document.querySelector('.form [aria-invalid]') !== null);
    assert.equal(await page.locator('.form .effect').textContent(), 'Nothing follows from this yet.', 'told at the field at once, and here no longer');
    await release();
    await page.getByRole('button', { name: 'Save the reading' }).click();
    const fault = await page.locator('.one-field .fault:not(:empty)').textContent();
    assert.match(fault, /is not a quantity\. Write /, 'a stop between what is wrong and what to do');
    assert.equal(await page.locator('.form .effect').textContent(), 'Nothing follows from this yet.', 'the fault is told once');
    await page.getByRole('button', { name: 'Put it away' }).click();
}

async function runComposition(page, file, look) {
    await page.getByRole('button', { name: 'Record a test: Hardware' }).click();
    await page.getByLabel('Test', { exact: true }).selectOption('xrf-filed');
    const group = page.locator('.form').getByRole('group', { name: /^Composition/ });
    const element = (row) => group.getByLabel('Element').nth(row);
    const share = (row) => group.getByLabel('Share', { exact: true }).nth(row);
    const invalid = () => group.locator('[aria-invalid]').evaluateAll((all) => all.map(({ value }) => value));
    const offered = await element(0).evaluate(({ list }) => [...list.options].map(({ value }) => value));
    assert.ok(offered.includes('Zn') && offered.includes('Pb'), offered.join());
    await element(0).fill('Zn');
    await share(0).fill('95,4 \u00b1 0,6');
    await hasEffect(page, 'With this, ');
    await element(1).fill('Al');
    await share(1).fill('4x');
    await share(1).press('Tab');
    await until(page, () => document.querySelector('.form [aria-invalid]') !== null);
    assert.deepEqual(await invalid(), ['Al', '4x'], 'the fault is at its row');
    await share(1).fill('4.0 \u00b1 0.3');
    await until(page, () => document.querySelector('.form [aria-invalid]') === null);
    await look('shares');
    await group.getByRole('button', { name: 'Another element' }).click();
    await page.keyboard.type('Xx');
    await share(2).press('Tab');
    await until(page, () => document.querySelector('.form [aria-invalid]') !== null);
    await group.getByRole('button', { name: 'Leave it out' }).nth(2).click();
    await until(page, () => document.querySelector('.form [aria-invalid]') === null);
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await page.waitForSelector('.reading:has-text("Zn")');
    assert.match(readFileSync(file, 'utf8'), /composition: \{Zn: 95\.4 \u00b1 0\.6 %, Al: 4\.0 \u00b1 0\.3 %\}/);
}

// A fibre by its name, and a colour, whose three numbers have their fields.
async function runSharesAndColour(page, file) {
    await page.getByRole('button', { name: 'Record a test: Lining' }).click();
    await page.getByLabel('Test', { exact: true }).selectOption('fibre-analysis');
    const shares = page.locator('.form').getByRole('group', { name: /^Shares/ });
    await shares.getByLabel('Fibre').first().fill('Cotton');
    await shares.getByLabel('Share', { exact: true }).first().fill('60 \u00b1 2');
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await page.waitForSelector('.reading:has-text("60")');
    assert.match(readFileSync(file, 'utf8'), /shares: \{cotton: 60 \u00b1 2 %\}/);
    await page.locator('.reading:has-text("60")').getByRole('button', { name: /^Change: / }).click();
    assert.equal(await shares.getByLabel('Fibre').first().inputValue(), 'cotton');
    assert.equal(await shares.getByLabel('Share', { exact: true }).first().inputValue(), '60 \u00b1 2 %');
    await page.getByRole('button', { name: 'Put it away' }).click();
    await page.getByRole('button', { name: 'Record a test: Body' }).click();
    await page.getByLabel('Test', { exact: true }).selectOption('colour-meter');
    for (const [which, lightness] of [['Before', '48.2'], ['After', '51.0']]) {
        const colour = page.locator('.form').getByRole('group', { name: new RegExp(`^${which}`) });
        for (const [axis, value] of [['L', lightness], ['a', '-1.5'], ['b', '20.3']]) await colour.getByLabel(axis, { exact: true }).fill(`${value} \u00b1 0.4`);
    }
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await page.waitForSelector('.reading:has-text("51.0")');
    assert.match(readFileSync(file, 'utf8'), /before: \{L: 48\.2 \u00b1 0\.4, a: -1\.5 \u00b1 0\.4, b: 20\.3 \u00b1 0\.4\}/);
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
    await runComposition(page, file, look);
    await runSharesAndColour(page, file);
    await runMaterial(page, file);
    await look('forms');
    console.log('forms: what cannot be read, a composition, a material by its name');
}
