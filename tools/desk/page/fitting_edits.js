// The wordings that can be taken all at once: each stretch of text once, in order. A wording that takes one of two statements
// that disagree as true is none of them: which of the two is true only a person knows.

export function fittingEdits(findings) {
    const edits = findings.filter(({ edit }) => edit && !edit.taken_as_true).map(({ field, edit }) => ({ ...edit, field }));
    const byPlace = new Map(edits.map((edit) => [`${edit.field}|${edit.at}`, edit]));
    return [...byPlace.values()].sort((a, b) => a.at[0] - b.at[0]);
}

// All `edits` of one text as one: the stretch that they span, and what stands there after them.
export function asOneEdit(text, edits) {
    const at = [edits[0].at[0], edits.at(-1).at[1]];
    let wording = '';
    let [place] = at;
    for (const edit of edits) {
        wording += text.slice(place, edit.at[0]) + edit.wording;
        [, place] = edit.at;
    }
    return { at, wording };
}
