// In which sections two states of a sample differ, in words: what a step of undo took back.

function same(one, other) { return JSON.stringify(one) === JSON.stringify(other); }

// `partName`: words for a part, by id. Empty: nothing that the sheet shows, as a comment in the file.
export function stateDifference(before, after, partName) {
    const texts = ({ listing }) => ({ ...listing, fields: listing?.fields?.map(({ field, text }) => [field, text]) });
    const parts = ({ parts: list }) => new Map((list ?? []).map(({ part, readings }) => [part, readings.map(({ line, ...rest }) => rest)]));
    const [old, now] = [parts(before), parts(after)];
    const sheet = ({ costs }) => ({ ...costs?.sheet, groups: costs?.sheet?.groups.map(({ group, none, lines }) => [group, none, lines.map(({ values }) => values)]) });
    return [same(before.sample, after.sample) ? null : 'facts of the sample',
            same(texts(before), texts(after)) ? null : 'the listing',
            ...[...new Set([...old.keys(), ...now.keys()])].filter((part) => !same(old.get(part), now.get(part))).map((part) => `tests of ${partName(part)}`),
            same(sheet(before), sheet(after)) ? null : 'costs'].filter(Boolean);
}
