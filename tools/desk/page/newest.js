// Asks while somebody types: one question at a time, and only the newest of those that came up meanwhile. There is no
// waiting before the first, so that a pause in typing costs nothing, unless whoever asks holds questions back.

const kPatience = 250;  // ms after which an answer to an older question is no longer waited for

// ask(question, signal) gives a promise; answered(answer, question) and refused(failure, question) take what comes of it.
// An answer that a newer question has overtaken is still handed on: it is better than nothing while somebody types fast.
export function newest(ask, answered, refused) {
    let waiting;
    let running;
    let isPaused = false;

    async function run(question) {
        const abort = new AbortController();
        running = { question, abort, since: performance.now() };
        try {
            const answer = await ask(question, abort.signal);
            if (!abort.signal.aborted) answered(answer, question);
        } catch (failure) {
            if (failure.name !== 'AbortError' && !abort.signal.aborted) refused(failure, question);
        }
        if (running?.abort !== abort) return;
        running = undefined;
        if (waiting !== undefined) {
            const next = waiting;
            waiting = undefined;
            run(next);
        }
    }

    const put = (question) => {
        if (isPaused || (running && performance.now() - running.since < kPatience)) {
            waiting = question;
            return;
        }
        running?.abort.abort();
        waiting = undefined;
        run(question);
    };
    // Until resume() nothing is asked; what is being asked is called back, and waits unless a newer question does.
    put.pause = () => {
        isPaused = true;
        waiting ??= running?.question;
        running?.abort.abort();
        running = undefined;
    };
    put.resume = () => {
        isPaused = false;
        if (waiting !== undefined) put(waiting);
    };
    // Forgets what is asked and what waits.
    put.stop = () => {
        waiting = undefined;
        running?.abort.abort();
        running = undefined;
    };
    return put;
}
