// The desk is ended while somebody types: the page says so and keeps what is typed.
import assert from 'node:assert/strict';

export async function runGone(page, name, stop) {
    await page.goto(`${new URL(page.url()).origin}/#/sample/${name}`);
    await page.waitForSelector('.reading');
    await page.getByRole('button', { name: 'Record a test: Strap' }).click();
    await page.getByLabel('Test', { exact: true }).selectOption('water-drop');
    await page.getByLabel('Note').fill('typed before');
    await stop();
    await page.locator('.form .pick').first().click();
    await page.waitForSelector('#trouble:has-text("does not answer")');
    await page.getByRole('button', { name: 'Save the reading' }).click();
    assert.equal(await page.getByLabel('Note').inputValue(), 'typed before');
    console.log('gone: what is typed is kept');
}
