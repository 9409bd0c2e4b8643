// What is missing is named at its field and in the words of the form; and what the sheet tells where nothing follows is true.
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hasFocus } from './keyboard_hand.mjs';
import { until } from './until.mjs';

const kSample = `sample: {what: Tote bag}
parts:
  body: {readings: [{method: thickness-gauge, thickness: 1.21 \u00b1 0.02 mm, date: 2026-09-10}]}
costs: {currency: EUR, fees: 3 EUR}
`;
const kPicture = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==', 'base64');

const kFaults = '.form .one-field .fault:not(:empty)';
function faultAt(page, text) {
    return until(page, ([where, wanted]) => [...document.querySelectorAll(where)].some(({ textContent }) => textContent.includes(wanted)), [kFaults, text]);
}

async function runTold(page) {
    const row = (name) => page.locator('.card .row', { has: page.getByRole('heading', { name, exact: true }) }).first();
    assert.match(await row('Believed').textContent(), /the test on record tells nothing of what it is made of/);
}

// Without a listing and a test.
async function runBare(page, folder) {
    writeFileSync(join(folder, 'bare.yaml'), 'sample: {what: Bare bag}\n');
    await page.goto(`${new URL(page.url()).origin}/#/sample/bare`);
    await page.waitForSelector('h1:has-text("Bare bag")');
    const next = page.locator('.card.next');
    assert.match(await next.textContent(), /Nothing is open yet: begin the listing/);
    await page.getByRole('button', { name: 'Open its card' }).click();
    const card = await page.locator('.cards .card').innerText();
    assert.match(card, /no test of it is on record/);
    assert.match(card, /Nothing is open yet: begin the listing/);
    assert.doesNotMatch(await page.locator('main').innerText(), /would tell more/);
}

async function runTests(page) {
    const save = page.getByRole('button', { name: 'Save the reading' });
    const test = page.getByLabel('Test', { exact: true });
    await page.getByRole('button', { name: 'Record a test: Body' }).click();
    await save.click();
    await faultAt(page, 'Choose the test that you made.');
    await test.selectOption('water-drop');
    await save.click();
    await faultAt(page, 'Choose what was seen.');
    assert.equal(await page.locator('.form > .fault:not(:empty)').count(), 0, 'told at its field alone');
    assert.equal(await page.evaluate(() => document.activeElement.type), 'radio', 'what is missing has the focus');
    await page.locator('.form .pick').first().click();
    await until(page, (where) => document.querySelector(where) === null, kFaults);

    // What is needed is marked, and nothing else.
    const marks = () => page.locator('.form .needed').allTextContents();
    await test.selectOption('coat-microscopy');
    assert.deepEqual(await marks(), [' (needed)'], 'its day alone');
    await test.selectOption('thickness-gauge');
    assert.deepEqual(await marks(), [' (needed)', ' (needed)']);
    await page.getByRole('button', { name: 'Put it away' }).click();
    await page.locator('.another select').selectOption('hardware');
    await page.getByRole('button', { name: 'Open its card' }).click();
    await test.selectOption('weighing-in-water');
    assert.deepEqual(await marks(), [' (all of these or none)', ' (all of these or none)', ' (all of these or none)', ' (needed)']);
    await page.locator('.form').getByLabel(/^In air/).fill('12.0 \u00b1 0.1');
    await until(page, () => /Nothing follows/.test(document.querySelector('.form .effect').textContent));
    assert.match(await page.locator('.form .effect').textContent(), /\u201cIn water\u201d must stand here\. The method works with \u201cIn air\u201d, \u201cIn water\u201d, \u201cWater\u201d\./);
    await save.click();
    await faultAt(page, '\u201cIn water\u201d must stand here');
    await hasFocus(page, /^In water/);
    assert.doesNotMatch(await page.locator('.form').textContent(), /in_water/);
}

// A picture that is none is refused at its field, until another one is chosen.
async function runPicture(page) {
    const choice = page.getByLabel('Choose a picture');
    await choice.setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') });
    await faultAt(page, 'This is no JPEG, PNG or WebP picture. Choose one of these kinds.');
    assert.equal(await page.locator('#trouble').textContent(), '');
    await choice.setInputFiles({ name: 'edge.png', mimeType: 'image/png', buffer: kPicture });
    await until(page, (where) => ![...document.querySelectorAll(where)].some(({ textContent }) => textContent.includes('WebP')), kFaults);
    await page.getByRole('button', { name: 'Put it away' }).click();
}

async function runCost(page) {
    await page.getByRole('button', { name: 'Add a line' }).click();
    const form = page.locator('.form');
    await form.getByLabel('Name').fill('body leather');
    await page.getByRole('button', { name: 'Save the line' }).click();
    await faultAt(page, 'Area is missing: fill it in, or count the line in another way.');
    await hasFocus(page, /^Area/);
    assert.doesNotMatch(await form.textContent(), /saw or measured/);
    await page.getByRole('button', { name: 'Put it away' }).click();
    await page.getByRole('button', { name: 'Change these facts' }).click();
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.waitForSelector('.form > .fault:has-text("Nothing is changed yet.")');
    await page.getByRole('button', { name: 'Put it away' }).click();
}

async function runName(page) {
    await page.goto(`${new URL(page.url()).origin}/#/`);
    await page.getByLabel(/^What it is/).fill('Tote');
    const name = page.getByLabel(/^File name/);
    assert.match(await page.locator('.one-field', { has: name }).locator('.hint').textContent(), /spaces and -_\.\(\)/);
    await name.fill('tote/1');
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await page.waitForSelector('.form .fault:has-text("spaces and -_.()")');
}

export async function runMissing(page, folder, look) {
    writeFileSync(join(folder, 'missing.yaml'), kSample);
    await runBare(page, folder);
    await page.goto(`${new URL(page.url()).origin}/#/sample/missing`);
    await page.waitForSelector('.reading');
    await runTold(page);
    await runTests(page);
    await look('missing');
    await runPicture(page);
    await runCost(page);
    await runName(page);
    console.log('missing: named at its field, in the words of the form');
}
