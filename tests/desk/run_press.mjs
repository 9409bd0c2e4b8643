// A press lasts while answers come in: what is pressed may move, or be drawn again, between the button going down and up, and
// is pressed all the same; whoever pulls away before letting go has pressed nothing.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hold } from './hold.mjs';
import { until } from './until.mjs';

async function middle(target) {
    const { x, y, width, height } = await target.boundingBox();
    return { x: x + width / 2, y: y + height / 2, height };
}

async function down(page, target) {
    await target.scrollIntoViewIfNeeded();
    const { x, y } = await middle(target);
    await page.mouse.move(x, y);
    await page.mouse.down();
    return y;
}

async function typeTitle(page, text) {
    await page.getByRole('button', { name: 'Change the listing' }).click();
    await page.waitForSelector('.form .layer mark');
    const release = await hold(page);
    await page.locator('.form').getByLabel('Title').fill(text);
    return release;
}

async function runMoved(page, file) {
    const before = readFileSync(file, 'utf8');
    const release = await typeTitle(page, 'Bag one');
    const save = page.getByRole('button', { name: 'Save the listing' });
    const y = await down(page, save);
    await release();
    await until(page, () => document.querySelector('.form .effect').textContent !== '');
    const now = await middle(save);
    assert.ok(Math.abs(now.y - y) > now.height / 2, 'the effect moves the button from under the mouse');
    await page.mouse.up();
    await page.waitForSelector('.told:has-text("Saved: the listing")');
    assert.equal(readFileSync(file, 'utf8').includes('Bag one'), true);

    // Pulled away: nothing is pressed, and the button still works.
    await page.getByRole('button', { name: 'Change the listing' }).click();
    await page.locator('.form').getByLabel('Title').fill('Bag two');
    await until(page, () => document.querySelector('.form .effect').textContent !== '');
    const from = await down(page, save);
    await page.mouse.move(900, from - 120, { steps: 4 });
    await page.mouse.up();
    await page.mouse.move(5, 5);
    await page.getByRole('button', { name: 'Put it away' }).click();
    assert.equal(await page.locator('.form').count(), 0);
    assert.equal(readFileSync(file, 'utf8').includes('Bag two'), false);
    await page.keyboard.press('Control+z');
    await until(page, () => !document.querySelector('.listing').textContent.includes('Bag one'));
    assert.equal(readFileSync(file, 'utf8'), before);
}

async function runRedrawn(page) {
    const release = await typeTitle(page, 'Bag in genuine vegan leather');
    const tie = page.locator('.listing .tie').first();
    await down(page, tie);
    await release();
    // The form is told, and what is pressed stays until it is let go.
    await until(page, () => document.querySelector('.form .effect').textContent !== '');
    await page.mouse.up();
    await until(page, () => document.activeElement.matches('details.finding[open] summary'));
    await until(page, () => document.querySelector('.listing').textContent.includes('genuine vegan leather'));
    await page.getByRole('button', { name: 'Put it away' }).click();
}

export async function runPress(page, folder, name) {
    await page.goto(`${new URL(page.url()).origin}/#/sample/${name}`);
    await page.waitForSelector('.reading');
    await runMoved(page, join(folder, `${name}.yaml`));
    await runRedrawn(page);
    console.log('press: kept where an answer moves what is pressed or draws it again');
}
