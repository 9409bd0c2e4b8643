// A reading on record, in one line, with what can be done about it.
import { button, element } from './element.js';
import { spoken } from './numbers.js';

function outcomeText(reading, methods) {
    if (!reading.outcome) return null;
    const choices = methods.get(reading.method)?.inputs.find(({ kind }) => kind === 'outcome')?.choices ?? [];
    return choices.find(({ id }) => id === reading.outcome)?.title ?? spoken(reading.outcome);
}

export function readingLine(part, reading, methods, name, change) {
    const title = reading.title ?? reading.method;
    const values = Object.entries(reading.values ?? {}).map(([key, value]) => `${spoken(key)}: ${value}`);
    const seen = [outcomeText(reading, methods), ...values].filter(Boolean);
    const address = reading.photo ? `/picture?${new URLSearchParams({ name, photo: reading.photo })}` : undefined;
    const keep = `${part} ${reading.index}`;
    return element('li', { class: 'reading' },
        element('div', {},
            element('p', {}, element('strong', {}, title), seen.length ? ': ' : null, seen.join('; ')),
            element('p', { class: 'quiet' }, [reading.date, reading.note].filter(Boolean).join(' \u00b7 '), address ? ' \u00b7 ' : null,
                address ? element('a', { href: address, target: '_blank', rel: 'noopener', 'data-keep': `photo ${keep}` }, `picture ${reading.photo}`) : null)),
        button('Change', () => change(reading), { 'data-keep': `change ${keep}`, 'aria-label': `Change: ${title}` }));
}
