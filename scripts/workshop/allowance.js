/** Names remembered before those with a full allowance are forgotten. */
const MOST_NAMES = 2000;

/**
 * How often something may happen under one name: `burst` times at once, `perSecond` in the long run.
 * A token bucket for each name.
 */
export class Allowance {
  /** @type {Map<string, { left: number, at: number }>} */
  #names = new Map();

  /**
   * @param {{ burst: number, perSecond: number }} rate
   * @param {() => number} [now] clock, ms
   */
  constructor({ burst, perSecond }, now = Date.now) {
    this.burst = burst;
    this.perSecond = perSecond;
    this.now = now;
  }

  /**
   * Whether it may happen once more now; if so it is counted.
   * @param {string} name
   */
  take(name) {
    const at = this.now();
    const before = this.#names.get(name) ?? { left: this.burst, at };
    const left = this.#leftAt(before, at);
    if (this.#names.size >= MOST_NAMES) this.#forget(at);
    this.#names.set(name, { left: left >= 1 ? left - 1 : left, at });
    return left >= 1;
  }

  /**
   * @param {{ left: number, at: number }} before
   * @param {number} at
   */
  #leftAt(before, at) {
    return Math.min(this.burst, before.left + ((at - before.at) / 1000) * this.perSecond);
  }

  /** @param {number} at */
  #forget(at) {
    for (const [name, before] of this.#names) {
      if (this.#leftAt(before, at) >= this.burst) this.#names.delete(name);
    }
  }
}
