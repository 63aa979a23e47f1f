import { randomBytes } from 'node:crypto';

/** Rounds kept in memory, so that a vote opened again goes on: two votes on two calls. */
const MOST_ROUNDS = 4;

/**
 * What the projector's page opens or closes.
 * @typedef {{ id: string, vote: 1 | 2, letters: readonly string[], open: boolean }} Round
 */

/**
 * The room in memory: seats of phones, one round, one letter a seat. It knows no names, no questions
 * and no answers.
 */
export class VoteRoom {
  /** Where each seat came from, in the order of joining. @type {Map<string, string>} */
  #seats = new Map();
  /** Letters of the round, by seat. @type {Map<string, string>} */
  #votes = new Map();
  /** Rounds that were opened before, by call and vote, the last ones only. @type {Map<string, { serial: number, votes: Map<string, string> }>} */
  #earlier = new Map();
  /** @type {Round | undefined} */
  #round;
  #serial = 0;
  /** The highest number so far. */
  #last = 0;

  /**
   * @param {{ voters: number, seatsPerAddress: number }} limits
   * @param {(seat: string) => boolean} isHere whether somebody sits there now
   */
  constructor(limits, isHere) {
    this.limits = limits;
    this.isHere = isHere;
  }

  /**
   * A new seat, or undefined when the room, or what one address may bring, is full. Seats that were left
   * without a vote make room for others.
   * @param {string} address
   */
  join(address) {
    const { voters, seatsPerAddress } = this.limits;
    const same = [...this.#seats].filter(([, from]) => from === address).map(([seat]) => seat);
    if (same.length >= seatsPerAddress && !this.#free(same)) return undefined;
    if (this.#seats.size >= voters && !this.#free([...this.#seats.keys()])) return undefined;
    const seat = randomBytes(16).toString('base64url');
    this.#seats.set(seat, address);
    return seat;
  }

  /** @param {readonly string[]} seats */
  #free(seats) {
    const left = seats.find((seat) => !this.isHere(seat) && !this.#votes.has(seat));
    return left !== undefined && this.#seats.delete(left);
  }

  /** @param {string} seat */
  has(seat) {
    return this.#seats.has(seat);
  }

  /**
   * Opens or closes a round. The same call and vote again goes on with what was voted, also after others.
   * @param {Round} round
   */
  set(round) {
    if (round.id !== this.#round?.id || round.vote !== this.#round.vote) this.#turnTo(round);
    this.#round = round;
  }

  /** @param {Round} round */
  #turnTo({ id, vote }) {
    const key = `${vote} ${id}`;
    const { serial, votes } = this.#earlier.get(key) ?? { serial: ++this.#last, votes: new Map() };
    this.#earlier.delete(key);
    this.#earlier.set(key, { serial, votes });
    const [oldest] = this.#earlier.keys();
    if (oldest !== undefined && this.#earlier.size > MOST_ROUNDS) this.#earlier.delete(oldest);
    this.#serial = serial;
    this.#votes = votes;
  }

  /**
   * Counts a letter, or changes the one counted before.
   * @param {string} seat
   * @param {{ round: number, letter: string }} vote
   * @returns {boolean} false when that round is not open, or has no such letter
   */
  vote(seat, { round, letter }) {
    if (!this.#round?.open || round !== this.#serial) return false;
    if (!this.#round.letters.includes(letter)) return false;
    this.#votes.set(seat, letter);
    return true;
  }

  /**
   * What a phone may know: the round by its number, and its own letter.
   * @param {string} seat
   */
  seenFrom(seat) {
    if (!this.#round) return null;
    const { letters, vote, open } = this.#round;
    return { round: this.#serial, letters, vote, open, yours: this.#votes.get(seat) ?? null };
  }

  /** What the projector's page may know. */
  get counted() {
    if (!this.#round) return { round: null, tallies: {} };
    const { id, vote, letters } = this.#round;
    const given = [...this.#votes.values()];
    const count = (/** @type {string} */ letter) => given.filter((each) => each === letter).length;
    const tallies = Object.fromEntries(letters.map((letter) => [letter, count(letter)]));
    return { round: { id, vote }, tallies };
  }
}
