import { AtOnce } from './atOnce';
import { boardOf } from './board';
import { beginHunt, suspects, type Hunt, type Told } from './hunt';
import type { Test } from './kinds';
import { looksAt, type Look } from './looks';
import { isAlike, named, nextTest, worthOf } from './next';
import { leftIn, type Practice } from './practice';
import type { Suspect } from './suspects';

/** What can be advised as a practice hunt stands. */
export interface Counsel {
  /** How many suspects may be what is hidden, or one of it. */
  readonly open: number;
  /** The test that is worth most, and the information that it is expected to give, bits; undefined where none tells more. */
  readonly best: () => { readonly test: Test; readonly bits: number } | undefined;
  /** Whom to name then: the likeliest suspect and those which no test tells from it. */
  readonly names: () => readonly Suspect[];
  /** Information that a test is expected to give, bits. @throws RangeError for a test that is not there. */
  readonly worth: (test: string) => number;
}

const toldOf = ({ test, outcome }: Told): Told => ({ test, outcome });

/** Suspects that were named and are not hidden, and those which no test tells from them. */
function outOf({ yard, guesses }: Practice): readonly string[] {
  const { suspects: all, stands } = boardOf(yard);
  const wrong = guesses.filter(({ isRight }) => !isRight).map(({ name }) => name);
  const numbers = wrong.map((name) => all.findIndex((each) => each.name === name));
  return all
    .filter((_, each) => numbers.some((number) => isAlike(stands, number, each)))
    .map(({ name }) => name);
}

const huntCounsel = (hunt: Hunt): Counsel => ({
  get open() {
    return suspects(hunt).filter(({ chance, against }) => chance > 0 && against.length === 0)
      .length;
  },
  best: () => nextTest(hunt),
  names: () => named(hunt).filter(({ fault }) => fault !== undefined),
  worth: (test) => worthOf(hunt, test)
});

/** Readings may seem wrong while two faults are in at once: so often, as a share. */
const WRONG_OF_TWO = 0.1;

/** Where nothing explains all that is seen, roads that show something are looked at one by one. */
function roadByRoad(begun: Hunt, looks: readonly Look[], made: readonly Told[]): Counsel {
  const odd = looks.filter(({ isOdd, roads }) => isOdd && roads.length > 0);
  const roads = [...new Set(odd.flatMap(({ roads: [road = ''] }) => road))];
  const each = roads.map((only) => {
    const first = odd.filter(({ roads: [road] }) => road === only).slice(0, 1);
    return huntCounsel({ ...begun, only, told: [...first.map(toldOf), ...made] });
  });
  const whole = huntCounsel({ ...begun, told: made });
  const some = [...each, whole];
  return some.find((one) => one.best() || one.names().length > 0) ?? whole;
}

/**
 * What can be advised once `until` tests are made, with what had been named when `guessed` were: what
 * the symptoms tell, and the readings since something was put right last.
 */
export function counselOf(hunt: Practice, until = hunt.made.length, guessed = until): Counsel {
  const { yard } = hunt;
  const guesses = hunt.guesses.filter(({ after }) => after <= guessed);
  const since = Math.max(0, ...guesses.filter(({ isRight }) => isRight).map(({ after }) => after));
  const then = { ...hunt, guesses };
  const left = leftIn(then);
  const looks = looksAt(
    boardOf(yard),
    left.flatMap(({ fault }) => fault ?? [])
  );
  const made = hunt.made.slice(since, until).map(toldOf);
  const out = outOf(then);
  if (left.length < 2)
    return huntCounsel({ ...beginHunt(yard, 0), told: [...looks.map(toldOf), ...made], out });
  const both = new AtOnce({ yard, looks: looks.map(toldOf), made, out });
  return both.open > 0 ? both : roadByRoad({ ...beginHunt(yard, WRONG_OF_TWO), out }, looks, made);
}
