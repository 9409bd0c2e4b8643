// The cost sheet: the total moves while a line is typed, and is saved with it.
import assert from 'node:assert/strict';
import { until } from './until.mjs';

function total(page) { return page.locator('.total strong').first().textContent(); }

export async function runCosts(page, name, look) {
    await page.goto(`${new URL(page.url()).origin}/#/sample/${name}`);
    await page.waitForSelector('.total strong');
    const before = await total(page);
    await page.getByRole('button', { name: 'Add a line' }).click();
    await page.locator('.form').getByLabel('Group').selectOption('hardware');
    await page.locator('.form').getByLabel('Name').fill('lobster clasp');
    await page.locator('.form').getByLabel('Pieces').fill('2');
    await page.locator('.form').getByLabel('Price').fill('3.00 EUR/piece');
    await until(page, (text) => document.querySelector('.total strong').textContent !== text, before);
    const typed = await total(page);
    assert.ok(Math.abs(parseFloat(typed) - parseFloat(before) - 6) < 2.7, `${before} to ${typed}: 6 for the clasps and their share of overhead at most`);
    assert.match(await page.locator('.total .was').first().textContent(), new RegExp(before.replace('.', '\\.')));
    await look('cost-form');
    await page.getByRole('button', { name: 'Save the line' }).click();
    await page.waitForSelector('.cost-group li:has-text("lobster clasp")');
    assert.equal(await total(page), typed);
    console.log(`costs: ${before} to ${typed}`);
}
