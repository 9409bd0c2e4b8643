// The file is the truth: changed by another hand it is noticed, never overwritten, and what is being typed is kept.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { until } from './until.mjs';

async function typeNote(page) {
    await page.getByRole('button', { name: 'Record a test: Body' }).click();
    await page.getByLabel('Test', { exact: true }).selectOption('water-drop');
    await page.locator('.form .pick').first().click();
    await page.getByLabel('Note').fill('kept while typing');
}

export async function runFile(page, folder, name, look) {
    const file = join(folder, `${name}.yaml`);
    await page.goto(`${new URL(page.url()).origin}/#/sample/${name}`);
    await page.waitForSelector('.reading');
    await typeNote(page);
    const whole = readFileSync(file, 'utf8');
    const first = `${whole.replace('condition: used', 'condition: used  # looked at by hand')}# and at the end\n`;
    // The first look meets an editor that has emptied the file and not written yet: nothing is told of that.
    let torn = 0;
    await page.route(/\/dossier\?/, async (route) => {
        const answer = await route.fetch();
        if (torn === 0 && answer.status() === 200) {
            torn = 1;
            await route.fulfill({ json: { ...await answer.json(), digest: 'torn', text: '' } });
            return;
        }
        await route.fulfill({ response: answer });
    });
    writeFileSync(file, first);
    // The page sees it by itself.
    await page.waitForSelector('.notice:has-text("changed outside")', { timeout: 15000 });
    assert.equal(torn, 1);
    assert.match(await page.locator('.changes').innerText(), /looked at by hand/);
    assert.doesNotMatch(await page.locator('.changes').innerText(), /gone: parts/);
    assert.ok(await page.locator('.changes li').count() <= 11, 'what is as before is left out, but for two lines beside what changed');
    assert.match(await page.locator('.changes .gap').innerText(), /^\d+ lines are as before$/);
    await page.unroute(/\/dossier\?/);
    assert.equal(await page.evaluate(() => document.activeElement.labels?.[0]?.textContent), 'Note', 'who types is not interrupted');
    await look('outside');
    // What is told keeps up with the file, and goes where the change is taken back.
    writeFileSync(file, '');
    await page.waitForSelector('.changes:has-text("gone: parts:")', { timeout: 15000 });
    writeFileSync(file, whole);
    await page.waitForSelector('.notice:has-text("changed outside")', { state: 'detached', timeout: 15000 });
    writeFileSync(file, first);
    await page.waitForSelector('.changes:has-text("looked at by hand")', { timeout: 15000 });
    await page.getByRole('button', { name: 'Take what is on disk' }).click();
    assert.equal(await page.getByLabel('Note').inputValue(), 'kept while typing');
    // And where it has not seen it yet, saving is refused.
    const second = first.replace('looked at by hand', 'looked at twice');
    writeFileSync(file, second);
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await page.waitForSelector('.notice:has-text("changed outside")');
    assert.equal(readFileSync(file, 'utf8'), second, 'nothing was written over it');
    // It is told where one pressed, with the way on; taken back by the other hand, it is told no longer.
    const told = page.locator('.form [role=status]:has-text("Nothing is saved: the file was changed outside")');
    await told.waitFor();
    await look('outside-refused');
    writeFileSync(file, first);
    await told.waitFor({ state: 'detached' });
    writeFileSync(file, second);
    await page.waitForSelector('.notice:has-text("take what is on disk first, then save it")', { timeout: 15000 });
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await told.getByRole('button', { name: 'Take what is on disk' }).click();
    await until(page, () => document.activeElement.textContent === 'Save the reading');
    await told.waitFor({ state: 'detached' });
    assert.equal(await page.locator('.notice:not(.mild)').count(), 0, 'nothing is left to take');
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await page.waitForSelector('.reading:has-text("kept while typing")');
    const now = readFileSync(file, 'utf8');
    assert.ok(now.includes('looked at twice') && now.includes('kept while typing'));
    // What has no form leads to the notice.
    writeFileSync(file, `${now}# once more\n`);
    await page.getByRole('button', { name: 'Undo' }).click();
    await until(page, () => document.activeElement.textContent.includes('changed outside'));
    writeFileSync(file, now);
    await page.waitForSelector('.notice:not(.mild)', { state: 'detached', timeout: 15000 });

    // By hand on the page: a fault is told with its line and nothing is written; mended it is saved.
    await page.locator('.file > summary').click();
    const field = page.locator('#file-text');
    await field.fill(now.replace('condition: used', 'condition: worn-out'));
    await page.getByRole('button', { name: 'Save the file' }).click();
    await page.waitForSelector('.file .fault button');
    assert.equal(readFileSync(file, 'utf8'), now);
    await look('file-fault');
    const state = () => page.locator('.state').textContent();
    assert.equal(await state(), 'Unsaved');
    await page.getByRole('button', { name: 'Back to what is on disk' }).click();
    assert.equal(await state(), 'Saved');
    await field.pressSequentially('# x');
    assert.equal(await state(), 'Unsaved');
    await field.fill(now.replace('looked at twice', 'looked at thrice'));
    await page.getByRole('button', { name: 'Save the file' }).click();
    await page.waitForSelector('.told:has-text("The file is saved")');
    assert.equal(await state(), 'Saved');
    await until(page, () => !document.querySelector('.file .fault'));
    assert.ok(readFileSync(file, 'utf8').includes('looked at thrice'));

    // A file that is no YAML at all can be mended here too.
    writeFileSync(join(folder, 'broken.yaml'), 'sample: {what: half a bag\nparts: [\n');
    await page.goto(`${new URL(page.url()).origin}/#/sample/broken`);
    await page.waitForSelector('.notice:has-text("has faults")');
    await look('broken');
    // That nothing is on record would not be true.
    const sheet = await page.locator('main').innerText();
    assert.doesNotMatch(sheet, /on record|No test would|No test yet|Nothing\./);
    assert.equal(sheet.match(/cannot be told now/g).length, 4, sheet);
    await page.locator('#file-text').fill('sample: {what: a whole bag}\n');
    await page.getByRole('button', { name: 'Save the file' }).click();
    await page.waitForSelector('h1:has-text("a whole bag")');
    assert.equal(await page.locator('.notice').count(), 0);
    console.log('file: a change by hand is noticed twice and lost never');
}
