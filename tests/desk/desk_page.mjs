// desk_page.mjs [--pictures FOLDER] TOOL FOLDER SOURCES: the desk's page in a headless browser, used as people use it, on
// dossiers of SOURCES that are copied into FOLDER. Exit status: 0 all holds, 1 something does not (told on standard error), 2 wrong call.
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { checkAccess } from './access.mjs';
import { startBrowser, startDesk, watch } from './desk_process.mjs';
import { runCosts } from './run_costs.mjs';
import { runDraft } from './run_draft.mjs';
import { runFile } from './run_file.mjs';
import { runForms } from './run_forms.mjs';
import { runGone } from './run_gone.mjs';
import { kHostile, runHostile } from './run_hostile.mjs';
import { runKeyboard } from './run_keyboard.mjs';
import { runListing } from './run_listing.mjs';
import { runMissing } from './run_missing.mjs';
import { runOvertaken } from './run_overtaken.mjs';
import { runPress } from './run_press.mjs';
import { runSample } from './run_sample.mjs';
import { runSpeed } from './run_speed.mjs';

// DESK_PARTS=listing,costs runs these alone.
const asked = process.env.DESK_PARTS?.split(',');
const words = process.argv.slice(2);
const pictures = words[0] === '--pictures' ? resolve(words.splice(0, 2)[1]) : undefined;
if (words.length !== 3) {
    console.error('usage: desk_page.mjs [--pictures FOLDER] TOOL FOLDER SOURCES');
    process.exit(2);
}
const [tool, folder, sources] = words.map((word) => resolve(word));

let faults = 0;
function fault(text) {
    faults += 1;
    console.error(text);
}

function fillFolder() {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    const corpus = join(sources, 'corpus');
    for (const file of ['demo/watch_strap.yaml', 'demo/watch_strap.md', 'dossiers/velmora_crossbody.yaml']) {
        copyFileSync(join(corpus, file), join(folder, file.split('/')[1]));
    }
    const quoted = JSON.stringify(kHostile);
    writeFileSync(join(folder, 'hostile.yaml'), `sample: {what: ${quoted}, seller: ${quoted}}
listing: {captured: 2026-09-01, name: ${quoted}, description: ${JSON.stringify(`genuine vegan leather ${kHostile}`)}}
parts:
  body: {readings: [{method: water-drop, outcome: stands, date: 2026-09-10, note: ${quoted}}]}
`);
}

function checkMarkup() {
    const require = createRequire(import.meta.url);
    const jar = join(dirname(require.resolve('vnu-jar/package.json')), 'build/dist/vnu.jar');
    try {
        execFileSync('java', ['-jar', jar, '--Werror', '--format', 'gnu', join(sources, 'tools/desk/page/index.html')],
                     { stdio: ['ignore', 'pipe', 'pipe'], encoding: 'utf8' });
    } catch (failure) {
        fault(`Nu HTML checker:\n${failure.stderr ?? failure}`);
    }
}

// Runs one part in a browser window of its own; what fails in it is told and does not keep the others from running.
async function part(browser, desk, name, run, expected = []) {
    if (asked && !asked.includes(name)) return;
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, acceptDownloads: true });
    const page = await context.newPage();
    const address = await desk.address();
    const told = (text) => fault(`${name}: ${text}`);
    watch(page, new URL(address).origin, told, expected);
    try {
        await page.goto(address);
        await page.waitForSelector('.samples');
        await run(page, (what) => checkAccess(page, what, told, pictures));
    } catch (failure) {
        told(failure.stack);
        if (pictures) await page.screenshot({ path: join(pictures, `failed-${name}.png`), fullPage: true });
    }
    await context.close();
}

if (pictures) mkdirSync(pictures, { recursive: true });
fillFolder();
checkMarkup();
const desk = await startDesk(tool, folder);
const browser = await startBrowser();
try {
    await part(browser, desk, 'keyboard', (page) => runKeyboard(page, folder));
    await part(browser, desk, 'sheets', async (page, look) => {
        await look('home');
        await page.goto(`${new URL(page.url()).origin}/#/words`);
        await page.locator('#listing-text').fill('Tote in genuine vegan leather\nLining: 60% cotton, 30% polyester. Waterproof, durable.');
        await page.waitForSelector('details.finding');
        await page.locator('details.finding').evaluateAll((all) => all.forEach((details) => { details.open = true; }));
        await look('words');
        await page.goto(`${new URL(page.url()).origin}/#/sample/watch_strap`);
        await page.waitForSelector('.reading');
        await page.getByRole('button', { name: 'Record a test: Strap' }).click();
        await page.getByLabel('Test', { exact: true }).selectOption('coat-microscopy');
        await page.locator('details.finding').first().evaluate((details) => { details.open = true; });
        await look('sample');
    });
    await part(browser, desk, 'draft', (page, look) => runDraft(page, folder, look));
    await part(browser, desk, 'sample', (page) => runSample(page, folder, 'velmora_crossbody'));
    await part(browser, desk, 'overtaken', (page) => runOvertaken(page, folder, 'velmora_crossbody'));
    await part(browser, desk, 'press', (page) => runPress(page, folder, 'velmora_crossbody'));
    // What would have faults is refused; the browser writes such an answer to the console.
    await part(browser, desk, 'listing', (page, look) => runListing(page, folder, 'velmora_crossbody', 'watch_strap', look), ['/dossier/save', '/dossier/try']);
    // A save over another hand's change is refused; the browser writes such an answer to the console.
    await part(browser, desk, 'file', (page, look) => runFile(page, folder, 'velmora_crossbody', look), ['/dossier/save', '/dossier/try', '/dossier/undo']);
    await part(browser, desk, 'costs', (page, look) => runCosts(page, folder, 'watch_strap', look));
    await part(browser, desk, 'forms', (page, look) => runForms(page, folder, look), ['/dossier/save', '/dossier/try']);
    // So are a picture that is none and a name that is none.
    await part(browser, desk, 'missing', (page, look) => runMissing(page, folder, look), ['/dossier/save', '/dossier/try', '/picture', '/dossier/new']);
    await part(browser, desk, 'hostile', (page, look) => runHostile(page, 'hostile', look));
    await part(browser, desk, 'speed', (page) => runSpeed(page));
    await part(browser, desk, 'gone', (page) => runGone(page, 'watch_strap', desk.stop), ['/dossier']);
} finally {
    await browser.close();
    await desk.stop();
}
console.log(faults === 0 ? 'the desk holds' : `${faults} faults`);
process.exit(faults === 0 ? 0 : 1);
