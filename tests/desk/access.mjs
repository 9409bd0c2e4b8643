// Whether a state of the page can be used by everybody: axe-core on all of it, then what depends on width and colours
// again at each width and in both schemes; and that nothing runs over the side at 320 CSS pixels (WCAG 2.2, 1.4.10).
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const require = createRequire(import.meta.url);
const kTags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const kSeen = ['color-contrast', 'target-size', 'scrollable-region-focusable', 'link-in-text-block'];  // depend on how it looks
const kWidths = { desk: { width: 1280, height: 900 }, phone: { width: 360, height: 740 } };
const kNarrowest = 320;
const axeSource = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

// pictures: a folder for screenshots, or undefined.
export async function checkAccess(page, what, fault, pictures) {
    let passes = 0;
    await page.keyboard.press('Escape');  // a passing message lies over the end of the sheet
    // Playwright evaluates outside of the page's policy, which forbids scripts of others.
    await page.evaluate(axeSource);
    for (const scheme of ['light', 'dark']) {
        for (const [width, viewport] of Object.entries(kWidths)) {
            await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
            await page.setViewportSize(viewport);
            // Somewhere down the sheet a target can be half below the bar that stays in sight; there one scrolls.
            await page.evaluate(() => window.scrollTo(0, 0));
            const run = scheme === 'light' && width === 'desk' ? { type: 'tag', values: kTags } : { type: 'rule', values: kSeen };
            const result = await page.evaluate((runOnly) => globalThis.axe.run({ runOnly }), run);
            passes += result.passes.length;
            if (result.passes.length === 0) fault(`${what}: axe-core checked nothing`);
            for (const violation of result.violations) {
                const places = violation.nodes.slice(0, 3).map((node) => `    ${node.html.slice(0, 200)}\n      ${node.failureSummary}`);
                fault(`${what}, ${width}, ${scheme}: ${violation.id}: ${violation.help}\n${places.join('\n')}`);
            }
            if (pictures) await page.screenshot({ path: join(pictures, `${what}-${width}-${scheme}.png`), fullPage: true });
        }
    }
    await page.setViewportSize({ width: kNarrowest, height: 700 });
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    if (wide > kNarrowest) fault(`${what}: ${wide} pixels wide where the window has ${kNarrowest}`);
    if (pictures) await page.screenshot({ path: join(pictures, `${what}-narrow.png`), fullPage: true });
    await page.setViewportSize(kWidths.desk);
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'no-preference' });
    console.log(`${what}: ${passes} rules passed`);
}
