// A person who has only a keyboard: everything is reached by Tab and told by the name that a screen reader would speak.
import assert from 'node:assert/strict';
import { kPatience, kPause } from './until.mjs';

const kMostStops = 400;

// The name and role of what has the focus, by the browser's own accessibility tree's rules as far as the page uses them.
function focused(page) {
    return page.evaluate(() => {
        const now = document.activeElement;
        if (!now || now === document.body) return '';
        const byId = (ids) => ids.split(' ').map((id) => document.getElementById(id)?.textContent ?? '').join(' ');
        const name = now.getAttribute('aria-label') ?? (now.getAttribute('aria-labelledby') ? byId(now.getAttribute('aria-labelledby')) : undefined)
            ?? (now.labels?.length ? [...now.labels].map((label) => label.textContent).join(' ') : now.textContent);
        return name.replaceAll(/\s+/g, ' ').trim();
    });
}

// `wanted`: a whole name or a pattern.
function isNamed(name, wanted) { return wanted instanceof RegExp ? wanted.test(name) : wanted === name; }

// Waits until what has the focus is `wanted`: it is led there by an answer, which may take its time.
export async function hasFocus(page, wanted, why = '') {
    const deadline = Date.now() + kPatience;
    let now = await focused(page);
    while (!isNamed(now, wanted)) {
        assert.ok(Date.now() < deadline, `the focus is on '${now}', not on '${wanted}'${why && `: ${why}`}`);
        await new Promise((done) => { setTimeout(done, kPause); });
        now = await focused(page);
    }
}

// Presses Tab (or with `back` Shift and Tab) until what has the focus matches.
export async function tabTo(page, name, { back = false } = {}) {
    const seen = [];
    for (let i = 0; i < kMostStops; i += 1) {
        await page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
        const now = await focused(page);
        seen.push(now);
        if (isNamed(now, name)) return now;
    }
    throw new Error(`Tab never reached ${name}; it passed ${[...new Set(seen)].slice(0, 60).join(' | ')}`);
}

export async function pressAt(page, name, key = 'Enter', options = {}) {
    await tabTo(page, name, options);
    await page.keyboard.press(key);
}
