// Waits until something holds on the page. Playwright's own waiting for functions needs eval, which the page's policy forbids,
// and the tests are to run under that policy.

export const kPatience = 20000;  // ms
export const kPause = 15;        // ms

export async function until(page, holds, given) {
    const deadline = Date.now() + kPatience;
    while (!await page.evaluate(holds, given)) {
        if (Date.now() > deadline) throw new Error(`never: ${holds} ${given ?? ''}`);
        await new Promise((done) => { setTimeout(done, kPause); });
    }
}
