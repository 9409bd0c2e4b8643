// Questions to the desk's server. An answer that is an error becomes a Refusal, which carries what the server said of it.

export class Refusal extends Error {
    constructor(status, told) {
        const error = told.error ?? {};
        super(error.message ?? 'The desk gave no answer that this page understands.');
        this.status = status;       // of HTTP; 0: no answer at all
        this.code = error.code ?? '';
        this.hint = error.hint ?? '';
        this.key = error.key;       // of the value that it is about
        this.faults = error.faults ?? [];
        this.now = told.now;        // of a 409: the state on disk
    }
}

async function read(response) {
    if (response.status === 204) return null;
    let told;
    try {
        told = await response.json();
    } catch {
        told = {};
    }
    if (!response.ok) throw new Refusal(response.status, told);
    return told;
}

async function send(path, options) {
    try {
        return await read(await fetch(path, { credentials: 'same-origin', ...options }));
    } catch (failure) {
        if (failure instanceof Refusal || failure.name === 'AbortError') throw failure;
        throw new Refusal(0, { error: { code: 'no-answer', message: 'The desk does not answer.',
                                        hint: 'Is `grainside desk` still running in its terminal? What you typed is kept here.' } });
    }
}

export function get(path, parameters = {}) {
    const query = new URLSearchParams(parameters).toString();
    return send(query ? `${path}?${query}` : path, {});
}

export function post(path, body, signal) {
    return send(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body), signal });
}

// The server knows a picture by its first bytes; it tells of what is none whatever the browser takes it for.
export function postPicture(name, file) {
    return send(`/picture?${new URLSearchParams({ name })}`,
                { method: 'POST', headers: { 'Content-Type': file.type.startsWith('image/') ? file.type : 'image/jpeg' }, body: file });
}
