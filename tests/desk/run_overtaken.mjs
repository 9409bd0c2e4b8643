// What is typed is saved before the server has looked at it: the question comes late, about a text that is gone. It is called
// back, so that nothing is refused (the browser would write that to the console), and what somebody types meanwhile is asked
// of the new text.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hold } from './hold.mjs';
import { until } from './until.mjs';

export async function runOvertaken(page, folder, name) {
    const text = () => readFileSync(join(folder, `${name}.yaml`), 'utf8');
    const before = text();
    await page.goto(`${new URL(page.url()).origin}/#/sample/${name}`);
    await page.waitForSelector('.reading');

    await page.getByRole('button', { name: 'Change these facts' }).click();
    await page.getByRole('button', { name: 'Change the listing' }).click();
    await page.waitForSelector('.form .layer mark');
    const release = await hold(page);
    await page.getByLabel('Months in use').fill('9');
    await page.locator('.form').getByLabel('Title').fill('Bag three');
    const calledBack = page.waitForEvent('requestfailed', (request) => request.url().endsWith('/dossier/try'))
        .then(() => true, () => false);
    // The file is written, and the page does not know yet.
    await page.route('**/dossier/save', async (route) => {
        const answer = await route.fetch();
        await calledBack;
        await release();
        await route.fulfill({ response: answer });
    });
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.waitForSelector('.told:has-text("Saved: facts")');
    await page.unroute('**/dossier/save');
    assert.ok(await calledBack, 'nothing is asked about the text before while it is being written');
    await until(page, () => document.querySelector('.form .effect').textContent !== '');
    assert.equal(text(), before.replace(/months_in_use: \d+/, 'months_in_use: 9'));
    assert.equal(await page.getByLabel('Title').inputValue(), 'Bag three', 'what was typed elsewhere stays');

    await page.getByRole('button', { name: 'Put it away' }).click();
    await page.keyboard.press('Control+z');
    await until(page, () => document.querySelector('.told')?.textContent.includes('Undone'));
    assert.equal(text(), before);
    console.log('overtaken: a question about the text before a save is called back');
}
