// A desk that serves a folder of dossiers made for one test, and a browser that is watched while it uses it.
import { spawn } from 'node:child_process';
import { chromium } from 'playwright-core';

const kStart = 20000;  // ms within which the desk must print its address

// Starts `TOOL desk FOLDER`. address(): one that lets a new browser in. stop() ends it.
export async function startDesk(tool, folder) {
    const child = spawn(tool, ['desk', folder], { stdio: ['pipe', 'pipe', 'pipe'] });
    let printed = '';
    let wake = () => {};
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (bytes) => { printed += bytes; wake(); });
    const next = async () => {
        const deadline = Date.now() + kStart;
        for (;;) {
            const found = /http:\/\/127\.0\.0\.1:\d+\/\?key=[^\s]+/.exec(printed);
            if (found) {
                printed = printed.slice(found.index + found[0].length);
                return found[0];
            }
            if (child.exitCode !== null || Date.now() > deadline) throw new Error(`no address: ${printed}`);
            await new Promise((done) => { wake = done; setTimeout(done, 200); });
        }
    };
    let first = next();
    return {
        async address() {
            if (first) {
                const given = await first;
                first = undefined;
                return given;
            }
            child.stdin.write('\n');
            return next();
        },
        stop() {
            if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
            return new Promise((done) => { child.once('exit', done); child.kill('SIGTERM'); });
        },
    };
}

export function startBrowser() {
    return chromium.launch({
        executablePath: '/usr/bin/chromium',
        args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
               '--disable-component-update', '--disable-sync'],
    });
}

// Tells fault(text) of whatever no page may do: fetch from elsewhere, write to the console, fail, open a dialog. `expected`
// holds endings of addresses whose refusal a test wants to see, and which the browser then writes to the console.
export function watch(page, origin, fault, expected) {
    page.on('request', (request) => {
        if (!request.url().startsWith(`${origin}/`)) fault(`fetches ${request.url()}`);
    });
    page.on('console', (message) => {
        if (!expected.some((ending) => message.location().url.includes(ending))) fault(`console: ${message.text()} ${message.location().url}`);
    });
    page.on('pageerror', (error) => fault(`error: ${error.message}`));
    page.on('dialog', (dialog) => {
        fault(`dialog: ${dialog.message()}`);
        dialog.dismiss();
    });
}
