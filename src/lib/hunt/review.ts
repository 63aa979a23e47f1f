import type { Test } from './kinds';
import { boardOf } from './board';
import { counselOf } from './counsel';
import { costOf, guessed, isOver, practice, tested, type Made, type Practice } from './practice';

/** What somebody needed. */
export interface Effort {
  readonly tests: number;
  /** In looks. */
  readonly cost: number;
}

/** One test that the learner made, beside the best one at that moment. */
export interface Step {
  readonly made: Made;
  readonly test: Test;
  /** Information that it was expected to give, bits. */
  readonly bits: number;
  /** How many suspects fitted the readings before and after it. */
  readonly before: number;
  readonly after: number;
  /** A test that was expected to give more for its cost, if there was one. */
  readonly better: { readonly test: Test; readonly bits: number } | undefined;
}

/** A practice hunt looked back at. */
export interface Review {
  readonly yours: Effort;
  /** What following the advice would have needed; undefined where it would not have found everything. */
  readonly best: Effort | undefined;
  readonly steps: readonly Step[];
  /** Number of the step at which most was given away; undefined where nothing was. */
  readonly weakest: number | undefined;
}

/** Most tests and repairs of the advice before it counts as lost. */
const MOST = 60;

const effortOf = (hunt: Practice): Effort => ({ tests: hunt.made.length, cost: costOf(hunt) });

/** The same hunt made by the advice alone. */
function bestOf({ yard, level, seed }: Practice): Effort | undefined {
  let hunt = practice(yard, level, seed);
  while (hunt.made.length + hunt.guesses.length < MOST) {
    if (isOver(hunt)) return effortOf(hunt);
    const counsel = counselOf(hunt);
    const best = counsel.best();
    const [name] = best ? [] : counsel.names();
    if (best) hunt = tested(hunt, best.test.id);
    else if (name) hunt = guessed(hunt, name.name);
    else return undefined;
  }
  return undefined;
}

function stepOf(hunt: Practice, index: number): Step {
  const made = hunt.made[index] as Made;
  const [, test] = boardOf(hunt.yard).find(made.test);
  const counsel = counselOf(hunt, index);
  const bits = counsel.worth(made.test);
  const best = counsel.best();
  const isBetter = best && best.bits / best.test.cost > bits / test.cost;
  return {
    made,
    test,
    bits,
    before: counsel.open,
    after: counselOf(hunt, index + 1, index).open,
    better: isBetter ? { test: best.test, bits: best.bits } : undefined
  };
}

const given = ({ better, bits, test }: Step): number =>
  better ? better.bits / better.test.cost - bits / test.cost : 0;

/** What the best advice would have needed, and where a better test than the learner's was at hand. */
export function review(hunt: Practice): Review {
  const steps = hunt.made.map((_, index) => stepOf(hunt, index));
  const most = Math.max(0, ...steps.map(given));
  const weakest = steps.findIndex((step) => given(step) === most);
  return {
    yours: effortOf(hunt),
    best: bestOf(hunt),
    steps,
    weakest: most > 0 ? weakest : undefined
  };
}
