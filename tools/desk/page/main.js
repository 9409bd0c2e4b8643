// Which sheet is shown: #/ the samples, #/words a draft, #/sample/NAME one sample. And what holds on every sheet: undo
// and redo by keys, looking for changes of the file, a warning before what is typed would be lost.
import { get } from './ask.js';
import { element } from './element.js';
import { HomePage } from './home_page.js';
import { kHarms, MaterialNames, partNames } from './names.js';
import { SamplePage } from './sample_page.js';
import { steadyPresses } from './steady_press.js';
import { endTrouble, hush, showTrouble } from './told.js';
import { WordsPage } from './words_page.js';

const kLook = 4000;  // ms between looks at the file
const sheet = document.getElementById('sheet');
const keeping = document.getElementById('keeping');
let home;
let words;
let sample;
let address;  // of the sheet that is shown

function isWriting(target) {
    return target instanceof HTMLElement && (target.matches('input, textarea, select') || target.isContentEditable);
}

// Ctrl and Z in a field belong to the browser.
function pressed(event) {
    if (event.key === 'Escape' || event.key === 'Tab') hush();
    if (!sample || !(event.ctrlKey || event.metaKey) || event.altKey || isWriting(event.target)) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) sample.redo();
    else sample.undo();
}

function put(node, title, isFirst) {
    sheet.replaceChildren(node);
    document.title = title;
    for (const link of document.querySelectorAll('.bar nav a')) {
        if (link.getAttribute('href') === (location.hash || '#/')) link.setAttribute('aria-current', 'page');
        else link.removeAttribute('aria-current');
    }
    if (isFirst) return;
    window.scrollTo(0, 0);
    if (!home.beginFocused()) sheet.querySelector('h1')?.focus({ preventScroll: true });
}

async function show(know, isFirst = false) {
    // Links to places on a sheet are not addresses of sheets.
    if (location.hash && !location.hash.startsWith('#/')) return;
    if (sample?.isTyping && !confirm('What you typed on this sheet is not saved. Leave it?')) {
        history.replaceState(null, '', address);
        return;
    }
    address = location.hash || '#/';
    hush();
    const name = decodeURIComponent(location.hash.replace(/^#\/sample\//, ''));
    sample?.close();
    sample = undefined;
    if (location.hash.startsWith('#/sample/')) {
        sample = new SamplePage(name, know, keeping);
        const opened = sample;
        await opened.open();
        if (opened === sample) put(opened.node, document.title, isFirst);
    } else if (location.hash === '#/words') {
        put(words.node, 'Check a draft - Grainside desk', isFirst);
    } else {
        await home.show();
        put(home.node, 'Samples - Grainside desk', isFirst);
    }
}

async function begin() {
    let about;
    let methods;
    let parts;
    try {
        about = await get('/about');
        ({ methods, parts } = await get('/methods'));
    } catch (failure) {
        showTrouble(failure);
        return;
    }
    endTrouble();
    const know = { ...about, parts: partNames(parts), harms: kHarms, materials: new MaterialNames(about.materials),
                   methods: new Map(methods.map((method) => [method.method, method])) };
    document.getElementById('notice').replaceChildren(...about.foot.map((text) => element('p', {}, text)),
        element('p', { class: 'quiet' }, `Grainside ${about.version}, rule book ${about.rule_book}.`));
    home = new HomePage(know);
    words = new WordsPage(know, (text, markets) => {
        home.begin(text, markets);
        location.hash = '#/';
    });
    document.addEventListener('keydown', pressed);
    document.addEventListener('pointerdown', hush);
    steadyPresses(document);
    window.addEventListener('hashchange', () => show(know));
    window.addEventListener('beforeunload', (event) => { if (sample?.isTyping) event.preventDefault(); });
    const look = () => { if (document.visibilityState === 'visible') sample?.look(); };
    setInterval(look, kLook);
    window.addEventListener('focus', look);
    await show(know, true);
}

begin();
