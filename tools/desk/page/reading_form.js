// Recording a test of a part: which test; what it does to the sample and how to make it safely, before anything is
// filled in; then what was seen or measured, made from the method's own description.
import { postPicture } from './ask.js';
import { element } from './element.js';
import { choiceField, noteField, pickField, textField, withUnit } from './field.js';
import { Form } from './form.js';
import { capital, spoken } from './numbers.js';
import { effortOf } from './plan_view.js';
import { SharesField } from './shares_field.js';
import { showTrouble, tell } from './told.js';

const kWhatHarms = 'This harms the sample: ';

function beforeYouBegin(method, harms) {
    const harm = harms.get(method.harm) ?? method.harm;
    return element('div', { class: 'before' },
        method.harm === 'none' ? null : element('p', { class: 'harm' }, element('strong', {}, kWhatHarms), harm, '.'),
        method.cautions.length === 0 ? null : element('div', { class: 'caution' }, element('p', { class: 'head' }, 'Before you begin'),
            element('ul', {}, method.cautions.map((caution) => element('li', {}, caution)))),
        element('p', {}, method.about), element('p', { class: 'quiet' }, `${effortOf({ cost: 0, ...method })}.`));
}

const kTogether = 'all of these or none';
const kEach = { elements: 'element', fibres: 'fibre' };

function inputField(input, reading, changed) {
    const label = input.title ?? spoken(input.key);
    const needed = input.needed || (input.together ? kTogether : false);
    if (input.kind === 'outcome') {
        const none = input.needed ? [] : [['', 'not looked at']];
        return pickField({ key: 'outcome', label: 'What was seen', value: reading?.outcome ?? (input.needed ? undefined : ''),
                           needed: input.needed, choices: [...input.choices.map(({ id, title }) => [id, title]), ...none] });
    }
    if (input.members) {
        const [, one] = /^[^:]*:([^,]*)/.exec(input.example);
        return new SharesField({ key: input.key, label, needed, value: reading?.values?.[input.key], unit: input.unit, changed,
                                 members: input.members, each: kEach[input.kind], hint: `Each with its uncertainty, such as ${one.trim()}.` });
    }
    const hints = { repeats: 'Several readings, with commas between them.', quantity: 'With its uncertainty.' };
    return textField({ key: input.key, label, needed, unit: input.unit === 'none' ? undefined : input.unit,
                       plusMinus: input.kind !== 'text', value: reading?.values?.[input.key] ?? '',
                       hint: [hints[input.kind], input.example ? `Such as ${input.example.replace(/ none$/, '')}` : null].filter(Boolean).join(' ') || undefined });
}

export class ReadingForm {
    // know: {methods (by id), harms, today}; `plan`: the tests of this part that would tell most; `reading`: one to change.
    constructor({ sample, part, partName, know, plan, method, reading, saved, away, remove }) {
        this.sample_ = sample;
        this.part_ = part;
        this.know_ = know;
        this.reading_ = reading;
        this.inputs_ = [];
        const suits = [...know.methods.values()].filter(({ parts }) => parts.includes(part));
        const suggested = plan.map((test) => know.methods.get(test.method)).filter(Boolean);
        const groups = [{ group: 'Would tell most', options: suggested.map((one) => [one.method, one.title]) },
            ...[...know.harms].map(([harm, name]) => ({ group: capital(name), options: suits
                .filter((one) => one.harm === harm && !suggested.includes(one)).map((one) => [one.method, one.title]) }))]
            .filter(({ options }) => options.length > 0);
        this.method_ = choiceField({ key: 'method', label: 'Test', value: reading?.method ?? method ?? '',
                                     options: [['', 'Choose the test'], ...groups] });
        this.method_.input.addEventListener('change', () => this.choose_());
        this.date_ = textField({ key: 'date', label: 'Day', type: 'date', value: reading?.date ?? know.today, needed: true });
        this.note_ = noteField({ key: 'note', label: 'Note', value: reading?.note ?? '', hint: 'Where on the part, what was odd.' });
        this.photo_ = this.photoField_(reading?.photo ?? '');
        this.form_ = new Form({ sample, title: reading ? `Change the reading: ${partName}` : `Record a test: ${partName}`,
                                saveText: 'Save the reading', remove: reading ? remove : undefined, lead: [this.method_], changes: () => this.changes_(),
                                missing: () => this.missing_(), saved, away });
        this.node = this.form_.node;
        if (this.method_.value) this.choose_();
    }

    focus() {
        if (this.method_.value) this.form_.title.focus();
        else this.method_.focus();
        this.node.scrollIntoView({ block: 'start' });
    }

    putAway() { this.form_.putAway(); }
    tellEffect(text) { this.form_.tellEffect(text); }

    choose_() {
        const method = this.know_.methods.get(this.method_.value);
        if (!method) {
            this.inputs_ = [];
            this.form_.show([], []);
            return;
        }
        const before = this.reading_?.method === method.method ? this.reading_ : undefined;
        this.inputs_ = method.inputs.map((input) => Object.assign(inputField(input, before, () => this.form_.typed()), { isNeeded: input.needed }));
        // The test is chosen first, and what it asks of hands and sample is read before what it showed can be filled in.
        this.form_.show([beforeYouBegin(method, this.know_.harms)],
                        [...this.inputs_, this.date_, this.photo_, this.note_]);
    }

    photoField_(photo) {
        const input = element('input', { type: 'file', accept: 'image/jpeg,image/png,image/webp' });
        const kept = textField({ key: 'photo', label: 'Its file in the folder', value: photo });
        const label = element('label', { class: 'take-picture' }, 'Choose a picture ', input);
        kept.node.prepend(label);
        kept.input.addEventListener('input', () => { kept.refusal = undefined; });
        input.addEventListener('change', async (event) => {
            event.stopPropagation();
            if (!input.files[0]) return;
            try {
                kept.input.value = (await postPicture(this.sample_.name, input.files[0])).photo;
                kept.refusal = undefined;
                tell(`The picture is kept as ${kept.input.value}.`);
                this.form_.typed();
            } catch (failure) {
                // Without an answer there is nothing to say of the picture.
                if (failure.status === 0) showTrouble(failure);
                else kept.refusal = failure;
            }
            input.value = '';
        });
        return kept;
    }

    // Of a reading that says nothing yet.
    missing_() {
        if (!this.method_.value) return [{ key: 'method', message: 'Choose the test that you made.' }];
        const needed = this.inputs_.filter(({ isNeeded }) => isNeeded);
        const ask = ({ key }) => ({ key, message: key === 'outcome' ? 'Choose what was seen.' : 'Fill in what was measured.' });
        if (needed.length) return needed.map(ask);
        const [first] = this.inputs_;
        return [{ key: first.key, message: first.key === 'outcome' ? 'Choose what was seen, or fill in what was measured below.'
                                                                   : 'Fill in at least one of the values that were measured.' }];
    }

    changes_() {
        const method = this.know_.methods.get(this.method_.value);
        if (!method) return null;
        const reading = { method: method.method, date: this.date_.value };
        const values = {};
        for (const field of this.inputs_) {
            if (field.value === '') continue;
            if (field.key === 'outcome') reading.outcome = field.value;
            else values[field.key] = withUnit(field.value, field.unit);
        }
        if (reading.outcome === undefined && Object.keys(values).length === 0) return null;
        if (Object.keys(values).length > 0) reading.values = values;
        if (this.photo_.value) reading.photo = this.photo_.value;
        if (this.note_.value) reading.note = this.note_.value;
        return [this.reading_ ? { do: 'change-reading', part: this.part_, index: this.reading_.index, reading }
                              : { do: 'add-reading', part: this.part_, reading }];
    }
}
