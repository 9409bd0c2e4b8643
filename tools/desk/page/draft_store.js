// The draft over a reload: kept for this tab alone, and gone with it. Nothing else of the page outlives it.

const kPlace = 'desk-draft';

// {text, markets, category}; undefined: none was kept.
export function keptDraft() {
    const kept = sessionStorage.getItem(kPlace);
    return kept === null ? undefined : JSON.parse(kept);
}

export function keepDraft(draft) { sessionStorage.setItem(kPlace, JSON.stringify(draft)); }
