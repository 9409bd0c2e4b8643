// A form at the desk: fields, what is being typed told to the sample as a draft, one press to save, one to put it away.
import { button, element, freshId } from './element.js';
import { faultText } from './fault_text.js';
import { focusFirstFault, inLabels, placeFaults, showAllFaults } from './field.js';
import { kTakeIt } from './outside_change.js';
import { redrawn } from './redrawn.js';

export class Form {
    // changes(): what is typed, as changes; null: nothing yet. saved(): it is on disk. away(): put away, nothing is kept.
    // remove(): where the form changes what is on record, takes that out.
    // lead: fields that decide which others there are; they stay where they are, and keep the focus, while those change.
    // check(): faults that keep it from being saved and that the server cannot know, with the key of their field.
    // offers(faults): what can be done about the faults of what is typed, as nodes. missing(): what has to be filled in
    // before there is something to save, as faults with the key of their field.
    constructor({ sample, title, heading = 'h4', saveText = 'Save', lead = [], fields = [], changes, check = () => [], offers = () => [],
                  missing = () => [{ message: 'Nothing is changed yet.' }], saved, away, remove }) {
        this.sample_ = sample;
        this.changes_ = changes;
        this.saved_ = saved;
        this.away_ = away;
        this.check_ = check;
        this.missing_ = missing;
        this.lead_ = lead;
        this.fields_ = [...lead, ...fields];
        this.isBusy_ = false;
        this.rest_ = element('div', { class: 'fault', role: 'status' });
        this.effect_ = element('p', { class: 'effect' });
        const offer = element('div');
        this.drawOffer_ = redrawn(offer, offers);
        this.body_ = element('div', {}, fields.map(({ node }) => node));
        const id = freshId('form');
        this.title = element(heading, { id, tabindex: '-1' }, title);
        this.submit_ = element('button', { type: 'submit', class: 'main' }, saveText);
        this.node = element('form', { class: 'form', novalidate: true, 'aria-labelledby': id,
                                      input: () => this.typed(), change: () => this.left_(),
                                      submit: (event) => { event.preventDefault(); this.save_(); } },
            this.title, lead.map(({ node }) => node), this.body_, offer, this.rest_, this.effect_,
            element('p', { class: 'deeds' }, this.submit_,
                    button('Put it away', () => this.putAway()), remove ? button('Take it out', remove) : null));
    }

    // Other fields, below `head`, in the place of those behind the lead; `nodes`: how they are laid out.
    show(head, fields, nodes = fields.map(({ node }) => node)) {
        this.fields_ = [...this.lead_, ...fields];
        this.rest_.replaceChildren();
        this.fault_ = undefined;
        this.body_.replaceChildren(...[head, nodes].flat(Infinity).filter(Boolean));
    }

    // Other fields behind the lead, that stand where they stand.
    hold(fields) { this.fields_ = [...this.lead_, ...fields]; }

    typed() {
        if (this.isBusy_) return;
        const changes = this.changes_();
        if (changes === null) this.showFaults_([]);
        this.sample_.draft(this, changes, (faults, text) => this.showFaults_(faults, text));
    }

    // A field that is left tells its fault from now on.
    left_() {
        if (this.fault_) this.tellUnread_();
        this.typed();
    }

    // What follows from what is typed. Where it cannot be read, nothing does, and that is told in its place.
    tellEffect(text) {
        const told = this.unread_ || text;
        if (this.effect_.textContent !== told) this.effect_.textContent = told;
    }

    putAway() {
        this.sample_.draft(this, null);
        this.away_();
    }

    showFaults_(found, text) {
        const faults = found.map((fault) => inLabels(fault, this.fields_));
        const rest = placeFaults(this.fields_, this.isAsked_ ? [...faults, ...this.check_()] : faults, text);
        this.drawOffer_(faults);
        [this.fault_] = faults;
        this.tellUnread_();
        // What is about no field is told when somebody asks to save; until then the form is merely not finished.
        this.rest_.replaceChildren(...(this.isAsked_ ? rest : []).map((fault) => element('p', {}, faultText(fault))));
    }

    // Nothing follows while there is a fault, which is told here unless it is told at its field.
    tellUnread_() {
        const isTold = this.isAsked_ || this.fields_.some(({ isTouched, isFaulty }) => isTouched && isFaulty);
        this.unread_ = this.fault_ ? `Nothing follows from this yet.${isTold ? '' : ` ${faultText(this.fault_)}`}` : '';
        this.tellEffect('');
    }

    // Told where one pressed, which may be far below the notice that shows what changed. What is taken is tried at once,
    // and the answer to that takes this away.
    tellOutside_() {
        const take = () => {
            this.sample_.takeNoticed();
            this.submit_.focus();
        };
        this.rest_.replaceChildren(element('p', {}, 'Nothing is saved: the file was changed outside of this page, as shown on top of this sheet. ',
                                           'What you typed is kept. Take what is on disk, then save.'),
                                   element('p', { class: 'deeds' }, button(kTakeIt, take)));
    }

    async save_() {
        if (this.isBusy_) return;
        const changes = this.changes_();
        this.isAsked_ = true;
        showAllFaults(this.fields_);
        if (this.check_().length > 0) {
            this.showFaults_([]);
            focusFirstFault(this.fields_);
            return;
        }
        if (changes === null) {
            this.showFaults_(this.missing_());
            if (!focusFirstFault(this.fields_)) this.fields_[0]?.focus();
            return;
        }
        this.isBusy_ = true;
        const isSaved = await this.sample_.save(changes, {
            owner: this,
            faults: (faults, text) => {
                this.showFaults_(faults, text);
                focusFirstFault(this.fields_);
            },
            outside: () => this.tellOutside_(),
        });
        this.isBusy_ = false;
        if (isSaved) this.saved_();
    }
}
