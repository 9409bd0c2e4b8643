// The one way in which this page makes elements. Text only ever becomes text nodes and attribute values, so that nothing
// of a listing, a dossier or a file name can become markup.

let ids = 0;

// A name for an element that labels or describes another.
export function freshId(what) {
    ids += 1;
    return `${what}-${ids}`;
}

// Children: nodes, texts, numbers, lists of them; null, undefined and false are left out. Attributes: functions listen to
// the event of that name, true stands without a value, null, undefined and false are left out.
export function element(tag, attributes = {}, ...children) {
    const made = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) {
        if (value === undefined || value === null || value === false) continue;
        if (typeof value === 'function') made.addEventListener(name, value);
        else made.setAttribute(name, value === true ? '' : String(value));
    }
    made.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false));
    return made;
}

// A button that does not send a form.
export function button(text, click, attributes = {}) {
    return element('button', { type: 'button', click, ...attributes }, text);
}
