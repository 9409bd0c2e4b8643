// Numbers as people read them.

// A share from 0 to 1. Certainty is never claimed by rounding.
export function percent(share) {
    if (share <= 0.01) return 'under 1 %';
    if (share >= 0.99) return 'over 99 %';
    return `${Math.round(share * 100)} %`;
}

export function money(value, currency) {
    return `${value.toFixed(2)} ${currency ?? ''}`.trim();
}

// "1 reading", "3 readings"
export function counted(count, one, many = `${one}s`) {
    return `${count} ${count === 1 ? one : many}`;
}

export function capital(text) {
    return text.charAt(0).toUpperCase() + text.slice(1);
}

// A key of the dossier as words: in_air, full-grain-leather.
export function spoken(key) {
    return capital(key.replaceAll(/[-_]/g, ' '));
}
