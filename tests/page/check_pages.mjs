// check_pages.mjs [--pictures FOLDER] PAGE...: checks pages of reports as a stranger's tools see them.
//   - the Nu HTML checker finds nothing, warnings included
//   - axe-core finds no violation of WCAG 2.2 A and AA, light and dark, at the width of a phone and of a desk
//   - nothing is fetched, no script runs, nothing runs over the side at 320 CSS pixels (WCAG 2.2, 1.4.10)
// With --pictures it also leaves screenshots and prints (A4, Letter) there, to be looked at. Exit status: 0 all hold,
// 1 something does not (told on standard error), 2 wrong call.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const require = createRequire(import.meta.url);
const axeSource = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const checkerJar = join(dirname(require.resolve('vnu-jar/package.json')), 'build/dist/vnu.jar');
const kTags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const kWidths = { phone: { width: 360, height: 740 }, desk: { width: 1280, height: 900 } };
const kNarrowest = 320;
const kTallest = 16000;  // a browser paints no taller picture
const kLarge = 400000;  // bytes; axe-core takes half a minute a look at such a page, so each width and each scheme is looked at once

let faults = 0;
function fault(text) {
    faults += 1;
    console.error(text);
}

function checkMarkup(pages) {
    try {
        execFileSync('java', ['-jar', checkerJar, '--Werror', '--format', 'gnu', ...pages],
                     { stdio: ['ignore', 'pipe', 'pipe'], encoding: 'utf8' });
    } catch (failure) {
        fault(`Nu HTML checker:\n${failure.stderr ?? failure}`);
    }
}

async function checkAccess(page, what) {
    await page.evaluate(axeSource);
    const result = await page.evaluate((tags) => globalThis.axe.run({ runOnly: { type: 'tag', values: tags } }), kTags);
    if (result.passes.length === 0) fault(`${what}: axe-core checked nothing`);
    for (const violation of result.violations) {
        const places = violation.nodes.slice(0, 3).map((node) => `    ${node.html.slice(0, 160)}\n      ${node.failureSummary}`);
        fault(`${what}: ${violation.id}: ${violation.help}\n${places.join('\n')}`);
    }
    return result.passes.length;
}

async function checkPage(browser, file, pictures) {
    const name = basename(file, '.html');
    const address = pathToFileURL(resolve(file)).href;
    const isLarge = statSync(file).size > kLarge;
    for (const scheme of ['light', 'dark']) {
        for (const [width, viewport] of Object.entries(kWidths)) {
            if (isLarge && (scheme === 'light') !== (width === 'phone')) continue;
            const page = await browser.newPage({ viewport, colorScheme: scheme, deviceScaleFactor: pictures ? 1.5 : 1 });
            const what = `${name}, ${width}, ${scheme}`;
            page.on('request', (request) => {
                if (request.url() !== address) fault(`${what}: fetches ${request.url()}`);
            });
            page.on('console', (message) => fault(`${what}: console: ${message.text()}`));
            page.on('dialog', (dialog) => {
                fault(`${what}: opened a dialog`);
                dialog.dismiss();
            });
            await page.goto(address);
            if (await page.locator('script').count() > 0) fault(`${what}: holds a script`);
            if (pictures) {
                const height = await page.evaluate(() => document.documentElement.scrollHeight);
                await page.screenshot({ path: join(pictures, `${name}-${width}-${scheme}.png`), fullPage: height < kTallest });
            }
            const passes = await checkAccess(page, what);
            console.log(`${what}: ${passes} rules passed`);
            await page.close();
        }
    }
    const page = await browser.newPage({ viewport: { width: kNarrowest, height: 700 }, javaScriptEnabled: true });
    await page.goto(address);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    if (wide > kNarrowest) fault(`${name}: ${wide} pixels wide where the window has ${kNarrowest}`);
    if (pictures) {
        for (const format of ['A4', 'Letter']) {
            await page.pdf({ path: join(pictures, `${name}-${format}.pdf`), format, preferCSSPageSize: false,
                             printBackground: true });
        }
    }
    await page.close();
}

const words = process.argv.slice(2);
const pictures = words[0] === '--pictures' ? words.splice(0, 2)[1] : undefined;
if (words.length === 0) {
    console.error('usage: check_pages.mjs [--pictures FOLDER] PAGE...');
    process.exit(2);
}
if (pictures) mkdirSync(pictures, { recursive: true });
checkMarkup(words);
const browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
           '--disable-component-update', '--disable-sync'],
});
try {
    for (const file of words) await checkPage(browser, file, pictures);
} finally {
    await browser.close();
}
console.log(faults === 0 ? `${words.length} pages hold` : `${faults} faults`);
process.exit(faults === 0 ? 0 : 1);
