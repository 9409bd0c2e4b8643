// Questions about what is typed wait until what this gives is called.
export async function hold(page) {
    let release;
    const held = new Promise((done) => { release = done; });
    await page.route('**/dossier/try', async (route) => {
        await held;
        await route.continue();
    });
    return async () => {
        release();
        await page.unroute('**/dossier/try');
    };
}
