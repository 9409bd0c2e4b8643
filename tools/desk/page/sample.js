// One sample at the desk: its state on disk, what is being typed, and what would follow from it. All that is written goes
// through here, so that nothing is ever written over a file that has changed meanwhile.
import { get, post } from './ask.js';
import { newest } from './newest.js';

// ms between two looks at a file that is being changed. An editor that empties a file before it writes leaves it
// torn for a moment: what two looks agree on is told.
const kSettled = 300;
const kLooks = 10;  // as often, then what is there is told: somebody writes without end

export class Sample {
    // seen(): something to show has changed. trouble(failure): no answer, or one that fits nowhere else.
    // changedOutside(now, isAsked): the file is another one than was read; `now` is its state. isAsked: a person wanted to
    // write over it and is not told of it elsewhere, else it was merely noticed; undefined: it is again what was read.
    constructor(name, { seen, trouble, changedOutside }) {
        this.name = name;
        this.saved = undefined;    // the state on disk as it was read or written last
        this.noticed_ = undefined; // what another hand put in its place and was told, until it is taken
        this.tried = undefined;    // the state with what is typed; undefined: nothing is typed, or it has faults
        this.turn_ = Promise.resolve();
        this.drafts_ = new Map();  // who types -> {changes, faults(list)}
        this.tell_ = { seen, trouble, changedOutside };
        this.try_ = newest(({ body }, signal) => post('/dossier/try', body, signal),
                           (state, { owners }) => this.wasTried_(state, owners), (failure) => this.refused_(failure));
    }

    get shown() { return this.tried ?? this.saved; }
    get isTyping() { return this.drafts_.size > 0; }
    get isChangedOutside() { return this.noticed_ !== undefined; }

    async open() {
        this.take(await get('/dossier', { name: this.name }));
    }

    // Takes a state as that on disk, and asks again what follows from what is typed.
    take(state) {
        this.try_.stop();
        this.saved = state;
        this.noticed_ = undefined;
        this.tried = undefined;
        this.tell_.seen();
        this.tryDrafts_();
    }

    // Takes what another hand put in the file's place.
    takeNoticed() {
        if (this.noticed_) this.take(this.noticed_);
    }

    // What `owner` is typing, as changes; null: nothing. faults(list, text) is called with what is
    // wrong with it; `text` is that of the file in which the lines of faults are counted.
    draft(owner, changes, faults) {
        if (changes === null) {
            if (!this.drafts_.delete(owner)) return;
        } else {
            this.drafts_.set(owner, { changes, faults });
        }
        this.tryDrafts_();
    }

    tryDrafts_() {
        if (this.drafts_.size === 0) {
            this.try_.stop();
            this.tried = undefined;
            this.tell_.seen();
            return;
        }
        const owners = [...this.drafts_.entries()];
        this.try_({ owners, body: { name: this.name, was: this.saved.digest, changes: owners.flatMap(([, { changes }]) => changes) } });
    }

    wasTried_(state, owners) {
        this.triedText_ = state.text;
        // What is wrong with the file itself is told on its sheet, not to those who type.
        const isKnown = ({ code, message }) => this.saved.faults?.some((one) => one.code === code && one.message === message);
        this.handOut_((state.faults ?? []).filter((fault) => !isKnown(fault)), owners);
        // From what has faults nothing follows, and what followed from what was typed before is no longer so.
        this.tried = state.faults?.length ? undefined : state;
        this.tell_.seen();
    }

    // Each fault to whoever types what it is about; one that names no change to all of them.
    handOut_(faults, owners) {
        let first = 0;
        for (const [owner, { changes }] of owners) {
            const end = first + changes.length;
            const own = faults.filter(({ change }) => change === undefined || (change >= first && change < end));
            this.drafts_.get(owner)?.faults(own, this.triedText_);
            first = end;
        }
    }

    refused_(failure) {
        if (failure.status === 409 && failure.now) this.look();
        else if (failure.status === 400) {
            this.handOut_(failure.faults.length ? failure.faults : [failure], [...this.drafts_.entries()]);
            this.tried = undefined;
            this.tell_.seen();
        } else this.tell_.trouble(failure);
    }

    // What writes waits for what is being written: each names the text that it changes.
    inTurn_(write) {
        const turn = this.turn_.then(write);
        this.turn_ = turn;
        return turn;
    }

    // While the file is written, nothing is asked of what is typed: overtaken by the write, a question would be refused as
    // about a text that is gone.
    writeInTurn_(write) {
        return this.inTurn_(async () => {
            this.try_.pause();
            try {
                return await write();
            } finally {
                this.try_.resume();
            }
        });
    }

    // Writes `changes`. True: it is on disk. A fault goes to faults(list, text) where it is given; outside(): it would have
    // been written over what another hand wrote.
    save(changes, { owner, faults, outside } = {}) {
        return this.writeInTurn_(() => this.write_(changes, { owner, faults, outside }));
    }

    // `which`: undo or redo.
    step(which) {
        return this.writeInTurn_(() => this.step_(which));
    }

    async write_(changes, { owner, faults, outside }) {
        try {
            const state = await post('/dossier/save', { name: this.name, was: this.saved.digest, changes });
            if (owner !== undefined) this.drafts_.delete(owner);
            this.take(state);
            return true;
        } catch (failure) {
            if (failure.status === 400 && faults) faults(failure.faults?.length ? failure.faults : [failure], this.triedText_);
            else this.refusedWrite_(failure, outside);
            return false;
        }
    }

    async step_(which) {
        try {
            this.take(await post(`/dossier/${which}`, { name: this.name, was: this.saved.digest }));
            return true;
        } catch (failure) {
            this.refusedWrite_(failure);
            return false;
        }
    }

    // A state that another hand may have written; what this page wrote itself is no news.
    foundOnDisk_(state, isAsked = false) {
        const isOther = state.digest !== this.saved.digest;
        if (!isOther && !this.noticed_) return;
        this.noticed_ = isOther ? state : undefined;
        this.tell_.changedOutside(this.noticed_, isAsked);
        // What was refused as being about another text holds again.
        if (!isOther) this.tryDrafts_();
    }

    refusedWrite_(failure, outside) {
        if (failure.status === 409 && failure.now) {
            this.try_.stop();  // it would be refused as well
            this.foundOnDisk_(failure.now, !outside);
            outside?.();
        } else this.tell_.trouble(failure);
    }

    // Looks whether somebody has changed the file, since it was read or since that was told.
    look() { return this.inTurn_(() => this.look_()); }

    async look_() {
        try {
            let state = await this.otherThan_((this.noticed_ ?? this.saved).digest);
            if (!state) return;
            for (let looks = 1; looks < kLooks; ++looks) {
                await new Promise((done) => { setTimeout(done, kSettled); });
                const next = await this.otherThan_(state.digest);
                if (!next) break;
                state = next;
            }
            this.foundOnDisk_(state);
        } catch (failure) {
            this.tell_.trouble(failure);
        }
    }

    // The state on disk, unless the file's digest is still that one.
    otherThan_(digest) { return get('/dossier', { name: this.name, was: digest }); }
}
