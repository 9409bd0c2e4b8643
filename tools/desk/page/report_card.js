// The report of a sample: opened in a tab of its own, or saved.
import { element } from './element.js';

const kForms = [['markdown', 'Markdown'], ['json', 'JSON'], ['csv', 'CSV']];

export function reportCard(name) {
    const address = (form) => `/report?${new URLSearchParams({ name, form })}`;
    return element('section', { class: 'card', 'aria-labelledby': 'report' }, element('h2', { id: 'report', tabindex: '-1' }, 'Report'),
        element('p', {}, 'Of what is saved. Print it from its own page.'),
        element('p', { class: 'deeds' }, element('a', { class: 'button main', href: address('html'), target: '_blank', rel: 'noopener' }, 'Open the report'),
                kForms.map(([form, title]) => element('a', { class: 'button', href: address(form), download: true }, `Save as ${title}`))));
}
