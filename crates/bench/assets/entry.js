// One field on the way from the hand to the file. Nothing here knows a page: fields.js shows what is decided here.
//
//              put             commit            taken
//     rest ──────────► typed ──────────► sent ──────────► rest
//      ▲                │ ▲                │
//      └──── revert ────┘ │                │ turned ────► refused: rest, and what was not taken is kept apart
//                         │  lost          │
//                         ├────────────────┤
//                         │ answered       │ put
//                         └──── again ◄────┘
//                        (a commit meanwhile is sent after the answer)
//
// At rest, and refused, a field shows what the file holds. From the first letter on it is the maker's until the answer:
// nothing that comes from elsewhere is put among the letters.

/**
 * What a change is meant for: the versions of the files that were seen when it was begun.
 * @typedef {{revision: string, held: string}} Versions
 * What is sent.
 * @typedef {{value: string, edits: object[]}} Wanted
 */
export class Entry {
  /** @type {'rest'|'typed'|'sent'|'again'|'refused'} */
  state = 'rest';
  /** What the field shows while it is the maker's. */
  shown = '';
  /** What the file held here when the maker saw it last, and the versions of the files then. */
  seen = '';
  versions = null;
  /** What is under way, and what is to be sent when that is answered. */
  sent = null;
  next = null;
  /** What was not taken, and why. */
  refused = null;
  /** Whether what is shown was sent and nobody answered. */
  lost = false;

  /** Whether the field shows something else than the file may hold. */
  get own() {
    return this.state !== 'rest' && this.state !== 'refused';
  }

  /** Whether an answer is awaited. */
  get busy() {
    return this.state === 'sent' || this.state === 'again';
  }

  /** Something was typed or chosen, where the file holds `held`. */
  put(shown, held, versions) {
    this.shown = shown;
    if (this.busy) {
      this.state = 'again';
      return;
    }
    if (!this.own) [this.seen, this.versions, this.lost] = [held, versions, false];
    this.state = 'typed';
  }

  /** What was typed is meant. Gives what is to be sent now. @param {Wanted} wanted @returns {Wanted|null} */
  commit(wanted, held) {
    if (this.state === 'again') {
      this.next = wanted;
      if (wanted.value === this.sent.value) [this.state, this.next] = ['sent', null];
      return null;
    }
    if (this.state !== 'typed') return null;
    this.lost = false;
    if (wanted.value === held) {
      this.rest();
      return null;
    }
    return this.send(wanted);
  }

  send(wanted) {
    this.state = this.shown === wanted.value ? 'sent' : 'again';
    [this.sent, this.next] = [wanted, null];
    return wanted;
  }

  /** The file took what was sent. Gives what is to be sent now. */
  taken(held, versions) {
    [this.seen, this.versions, this.refused] = [held, versions, null];
    return this.answered(held, 'rest');
  }

  /** It was not taken. Gives what is to be sent now. @param {string[]} why */
  turned(why, held, versions) {
    this.refused = { value: this.sent.value, why };
    this.follow(held, versions);
    return this.answered(held, 'refused');
  }

  answered(held, state) {
    const { next } = this;
    const again = this.state === 'again';
    [this.sent, this.next] = [null, null];
    this.state = again && this.shown !== held ? 'typed' : state;
    return next && next.value !== held ? this.send(next) : null;
  }

  /**
   * Nobody answered; whether it was taken is not known. Words stay in their field to be sent again, a choice is made again.
   * What the field shows no longer is kept apart.
   * @param {string[]} why
   */
  unanswered(why, stays) {
    const hidden = [this.next, this.sent].find((wanted) => wanted && !(stays && wanted.value === this.shown));
    if (hidden) this.refused = { value: hidden.value, why };
    [this.state, this.sent, this.next, this.lost] = [stays ? 'typed' : 'refused', null, null, true];
  }

  /** The page shows these versions of the files, where the file holds `held`. */
  follow(held, versions) {
    // It was taken, although nobody said so.
    if (this.lost && held === (this.own ? this.shown : this.refused?.value)) this.rest();
    if (!this.own) return;
    // What others changed here meanwhile was not seen: the file then refuses what was meant for the earlier text.
    if (held === this.seen) this.versions = versions;
  }

  /** What was typed is given up. What was meant cannot be. */
  revert() {
    if (!this.busy) this.rest();
    else if (this.next) this.shown = this.next.value;
    else [this.state, this.shown] = ['sent', this.sent.value];
  }

  rest() {
    [this.state, this.refused, this.lost] = ['rest', null, false];
  }
}
