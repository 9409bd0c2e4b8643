// The card of one part of the product: what is said of it, what was tested, what it is believed to be, the next test.
import { beliefsView } from './beliefs_view.js';
import { button, element, freshId } from './element.js';
import { findingCard } from './finding_card.js';
import { notRead } from './not_read.js';
import { planView } from './plan_view.js';
import { ReadingForm } from './reading_form.js';
import { readingLine } from './reading_line.js';
import { redrawn } from './redrawn.js';
import { tell } from './told.js';

export class PartCard {
    // know: {methods, harms, parts, today}; deeds: {take(verdict), show(verdict)}.
    constructor(sample, part, know, deeds) {
        this.sample_ = sample;
        this.part_ = part;
        this.know_ = know;
        this.name_ = know.parts.get(part) ?? part;
        this.form_ = undefined;
        const id = freshId('part');
        this.head = element('h2', { id, tabindex: '-1' }, this.name_);
        const cells = { said: element('div'), tested: element('ol', { class: 'readings' }), believed: element('div'), next: element('div') };
        this.formPlace_ = element('div');
        this.recordButton_ = button('Record a test', () => this.record(), { class: 'main', 'aria-label': `Record a test: ${this.name_}` });
        // Of what is said of the whole product, some parts can be tested, the whole as such hardly ever.
        const canTest = [...know.methods.values()].some(({ parts }) => parts.includes(part));
        const row = (title, ...content) => element('div', { class: 'row' }, element('h3', {}, title), element('div', {}, content));
        this.node = element('section', { class: 'card', 'aria-labelledby': id }, this.head, row('Said', cells.said),
                            ...(!canTest ? [] : [row('Tested', cells.tested, element('p', { class: 'deeds' }, this.recordButton_), this.formPlace_),
                            row('Believed', cells.believed), row('Next test', cells.next)]));
        this.drawSaid_ = redrawn(cells.said, (verdicts, isRead) => (!isRead ? notRead('What is said of it') : verdicts.length === 0 ? element('p', { class: 'quiet' }, 'Nothing.')
            : verdicts.map((verdict) => findingCard(verdict, verdict.canTake ? deeds : { show: deeds.show }, verdict.seen))));
        this.drawTested_ = redrawn(cells.tested, (readings) => (!readings ? element('li', {}, notRead('What was tested')) : readings.length === 0 ? element('li', { class: 'quiet' }, 'No test yet.')
            : readings.map((reading) => readingLine(part, reading, know.methods, sample.name,
                (one) => this.record({ reading: one })))));
        this.drawBelieved_ = redrawn(cells.believed, (isRead, beliefs, tests, before) => (isRead ? beliefsView(beliefs, tests, before) : notRead('What it is')));
        this.drawNext_ = redrawn(cells.next, (plan, isRead, hasListing) => (isRead ? planView(plan, hasListing, know.harms, (test) => this.record({ method: test.method })) : notRead('Which test would tell more')));
    }

    // `verdicts` of this part, with `seen` (number, was, id); state: readings: undefined where the file is no YAML; beliefs, of so many tests; plan; isRead: the file has no
    // faults; hasListing. `before`: beliefs on disk.
    show(verdicts, { readings, beliefs, tests, plan, isRead, hasListing }, before) {
        this.plan_ = plan;
        this.drawSaid_(verdicts, isRead);
        this.drawTested_(readings);
        this.drawBelieved_(isRead, beliefs, tests, before);
        this.drawNext_(plan, isRead, hasListing);
    }

    // What follows from what is typed in the form of this part; empty: nothing yet.
    tellEffect(text) { this.form_?.tellEffect(text); }

    get isTyping() { return this.form_ !== undefined; }

    record({ method, reading } = {}) {
        this.form_?.putAway();
        const close = () => {
            this.formPlace_.replaceChildren();
            this.form_ = undefined;
            this.recordButton_.hidden = false;
            this.recordButton_.focus();
        };
        this.form_ = new ReadingForm({ sample: this.sample_, part: this.part_, partName: this.name_, know: this.know_, plan: this.plan_ ?? [],
                                       method, reading, away: close, remove: () => this.remove_(reading), saved: () => { close(); tell(`Saved: ${this.name_}.`); } });
        this.recordButton_.hidden = true;
        this.formPlace_.replaceChildren(this.form_.node);
        this.form_.focus();
    }

    async remove_(reading) {
        const isSaved = await this.sample_.save([{ do: 'remove-reading', part: this.part_, index: reading.index }]);
        if (!isSaved) return;
        this.form_?.putAway();
        tell('Taken out. Undo brings it back.');
    }
}
