import { once, type Yard } from '../yard';
import { Concerns } from './concerns';
import type { Test } from './kinds';
import { moments } from './moment';
import { Numbers, Patches } from './patch';
import { Islands } from './powered';
import { roundsOf } from './rounds';
import { standsAt, type Stand } from './stand';
import { suspectsOf, type Suspect } from './suspects';

/** Everything that can be tested of a yard, and what every suspect would show. */
export class Board {
  readonly suspects: readonly Suspect[];
  readonly stands: readonly Stand[];
  private readonly places: ReadonlyMap<string, readonly [Stand, Test]>;

  constructor(yard: Yard) {
    const suspects = suspectsOf(yard);
    this.suspects = suspects;
    const named = { elements: new Numbers(), nodes: new Numbers() };
    const patches = new Patches(yard, named);
    const concerns = new Concerns(yard, suspects, patches);
    const shared = { patches, concerns, islands: new Islands() };
    const stands = moments(yard).flatMap((moment) => standsAt(yard, moment, suspects, shared));
    this.stands = [...roundsOf(stands), ...stands];
    this.places = new Map(
      this.stands.flatMap((stand) => stand.tests.map((test) => [test.id, [stand, test] as const]))
    );
  }

  /**
   * The test of that id, and where it is made.
   * @throws RangeError when the yard has no such test
   */
  find(id: string): readonly [Stand, Test] {
    const place = this.places.get(id);
    if (!place) throw new RangeError(`No test '${id}' in this yard.`);
    return place;
  }

  /** How likely each outcome of a test is for a suspect, by their numbers. */
  shares(id: string, suspect: number): readonly number[] {
    const [stand, test] = this.find(id);
    return stand.sharesOf(test, stand.of(suspect));
  }
}

/** The board of a yard, one for each. */
export const boardOf = once((yard: Yard) => new Board(yard));

/** Every test that can be made of a yard. */
export const testsOf = (yard: Yard): readonly Test[] =>
  boardOf(yard).stands.flatMap(({ tests }) => tests);

/**
 * How likely each outcome of each test is for each suspect, tests first. What suspects share is
 * worked out once.
 */
export const outcomes = (
  yard: Yard,
  tests: readonly Test[],
  suspects: readonly Suspect[]
): readonly (readonly (readonly number[])[])[] => {
  const board = boardOf(yard);
  const numbers = suspects.map((suspect) => board.suspects.indexOf(suspect));
  return tests.map(({ id }) => numbers.map((number) => board.shares(id, number)));
};
