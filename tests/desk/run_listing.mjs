// The listing's own text: left alone where it has a file of its own, begun by keyboard where there is none, and changed field
// by field where it stands in the dossier.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hasFocus, pressAt, tabTo } from './keyboard_hand.mjs';
import { until } from './until.mjs';

const kBare = `# One bag.
sample:
  what: Tote bag, tan   # by hand
parts:
  body: {readings: [{method: water-drop, outcome: stands, date: 2026-09-10}]}
`;

function open(page, name) { return page.goto(`${new URL(page.url()).origin}/#/sample/${name}`); }

async function runBegun(page, folder, look) {
    const file = join(folder, 'begun.yaml');
    writeFileSync(file, kBare);
    await open(page, 'begun');
    await page.waitForSelector('.reading');
    await pressAt(page, 'Begin the listing');
    await hasFocus(page, 'Begin the listing', 'the head of the form has the focus');
    await tabTo(page, /^Title/);
    await page.keyboard.insertText('Tote in genuine vegan leather');
    await page.waitForSelector('.form .layer mark.misleading');
    await page.waitForSelector('.listing mark.misleading');
    await tabTo(page, /^Description/);
    await page.keyboard.insertText('Body: full grain leather.');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.keyboard.insertText('Edges painted by hand: twice.');
    await pressAt(page, 'Add an attribute');
    await hasFocus(page, 'Attribute');
    await tabTo(page, /^Its text/);
    await page.keyboard.insertText('100 % cotton');
    await page.keyboard.press('Enter');
    await until(page, () => document.activeElement.getAttribute('aria-invalid') === 'true');
    await hasFocus(page, /^Attribute/, 'what is missing has the focus');
    assert.equal(readFileSync(file, 'utf8'), kBare, 'nothing is written yet');
    await look('listing-begin');
    // What the server finds wrong is told below its field.
    const captured = page.locator('.form').getByLabel('Captured on');
    const today = await captured.inputValue();
    await captured.fill('2131-01-01');
    await captured.press('Tab');
    await until(page, () => document.querySelector('.form [type=date][aria-invalid]') !== null);
    await captured.fill(today);
    await until(page, () => document.querySelector('.form [type=date][aria-invalid]') === null);
    await page.locator('.named-row input').focus();
    await page.keyboard.insertText('Lining');
    await tabTo(page, /^Its text/);
    await page.keyboard.press('Enter');
    await page.waitForSelector('.told:has-text("Saved: the listing")');
    await hasFocus(page, 'Change the listing');
    assert.equal(readFileSync(file, 'utf8'), `${kBare}listing:
  captured: ${today}
  name: Tote in genuine vegan leather
  description: |
    Body: full grain leather.

    Edges painted by hand: twice.
  attributes: {Lining: 100 % cotton}
`);
    // An attribute is taken out, and kept after all; then out.
    await page.keyboard.press('Enter');
    await pressAt(page, 'Take it out: Lining');
    await until(page, () => !document.querySelector('.listing').textContent.includes('cotton'));
    await page.keyboard.press('Enter');
    await until(page, () => document.querySelector('.listing').textContent.includes('cotton'));
    await hasFocus(page, 'Take it out: Lining');
    await page.keyboard.press('Enter');
    await look('listing-attribute-out');
    await pressAt(page, 'Save the listing');
    await page.waitForSelector('.told:has-text("Saved: the listing")');
    assert.ok(!readFileSync(file, 'utf8').includes('attributes'));
}

async function runChanged(page, folder, name, look) {
    const file = join(folder, `${name}.yaml`);
    const before = readFileSync(file, 'utf8');
    await open(page, name);
    await page.waitForSelector('.facts:has-text("Velmora")');  // the sheet before has readings as well
    await page.getByRole('button', { name: 'Change the listing' }).click();
    await page.waitForSelector('.form .layer mark');  // marked as it is on record
    const description = page.locator('.form').getByLabel('Description');
    const text = await description.inputValue();
    await description.fill(text.replace('durable polyester', 'recycled polyester, waterproof'));
    await until(page, () => [...document.querySelectorAll('.form .layer mark')].some(({ textContent }) => textContent === 'recycled'));
    await until(page, () => document.querySelector('.form .effect').textContent !== '');
    await look('listing-change');
    await page.getByRole('button', { name: 'Save the listing' }).click();
    await page.waitForSelector('.told:has-text("Saved: the listing")');
    assert.equal(readFileSync(file, 'utf8'), before.replace('durable polyester', 'recycled polyester, waterproof'), 'all other bytes are as they were');
    await page.keyboard.press('Control+z');
    await until(page, () => document.querySelector('.listing').textContent.includes('durable'));
    assert.equal(readFileSync(file, 'utf8'), before);

    // A listing that would say nothing is no listing: told, and not written.
    await page.getByRole('button', { name: 'Change the listing' }).click();
    for (const label of ['Title', 'Description', 'Material']) await page.locator('.form').getByLabel(label).fill('');
    await page.getByRole('button', { name: 'Save the listing' }).click();
    await page.waitForSelector('.form div.fault:has-text("no text")');
    assert.equal(readFileSync(file, 'utf8'), before);
    await page.getByRole('button', { name: 'Put it away' }).click();
    assert.equal(await page.locator('.form').count(), 0);
}

export async function runListing(page, folder, name, nameOfFile, look) {
    await open(page, nameOfFile);
    await page.waitForSelector('.tag p:has-text("which the desk does not change")');
    assert.equal(await page.getByRole('button', { name: /the listing/ }).count(), 0);
    await runBegun(page, folder, look);
    await runChanged(page, folder, name, look);
    console.log('listing: begun by keyboard, changed, an attribute put in and taken out');
}
