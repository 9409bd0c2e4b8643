// Text of others stays text: in listings, notes, sellers and pictures' names.
import assert from 'node:assert/strict';

export const kHostile = '<img src=x onerror="document.title=1"><script>document.title=2</script><a href="javascript:document.title=3">l</a>&amp;"\'`${x}';

export async function runHostile(page, name, look) {
    const origin = new URL(page.url()).origin;
    await page.goto(`${origin}/#/words`);
    await page.locator('#listing-text').fill(`${kHostile}\nMade of ${kHostile} genuine vegan leather ${kHostile}\n${'genuine PU leather, '.repeat(300)}`);
    await page.waitForSelector('.layer mark');
    await page.waitForSelector('details.finding');
    assert.equal(await page.locator('main img, main script, .layer a').count(), 0);
    await page.goto(`${origin}/#/sample/${name}`);
    await page.waitForSelector('.reading');
    const text = await page.locator('main').innerText();
    assert.ok(text.includes(kHostile), 'it is shown as it is');
    assert.equal(await page.locator('main img, main script, main a[href^="javascript"]').count(), 0);
    assert.match(await page.title(), /<img/);
    await look('hostile');
    console.log('hostile: text stays text');
}
