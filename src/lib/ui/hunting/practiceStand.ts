import {
  costOf,
  guessed,
  hiddenIn,
  huntOf,
  leftIn,
  nextTest,
  practice,
  review,
  suspectsOf,
  symptomsOf,
  tested,
  type Practice
} from '../../hunt';
import type { Yard } from '../../yard';
import { suspectTold, wordsOf } from './huntStand';
import type { NamedTold, PracticeAsk, PracticeTold, ReviewTold } from './huntTold';

/** A practice hunt, whether advice was asked for since the last test, and whether it was given up. */
export interface Practising {
  readonly hunt: Practice;
  readonly isAdvised: boolean;
  readonly isGivenUp: boolean;
}

/** Every suspect that can be named. */
export const namesOf = (yard: Yard): readonly NamedTold[] =>
  suspectsOf(yard).flatMap((suspect) =>
    suspect.fault
      ? [
          {
            name: suspect.name,
            place: suspect.name.replace(/^[^:]+: /, ''),
            words: wordsOf(suspect)
          }
        ]
      : []
  );

/** The practice hunt after something is done. @throws RangeError where none has begun. */
export function practised(
  yard: Yard,
  before: Practising | undefined,
  ask: PracticeAsk
): Practising {
  if (ask.do === 'begin') {
    const hunt = practice(yard, ask.level, ask.seed);
    return { hunt, isAdvised: false, isGivenUp: false };
  }
  if (!before) throw new RangeError('No practice hunt has begun: hide a fault first.');
  const { hunt } = before;
  switch (ask.do) {
    case 'try':
      return { ...before, hunt: tested(hunt, ask.test), isAdvised: false };
    case 'name':
      return { ...before, hunt: guessed(hunt, ask.name), isAdvised: false };
    case 'advise':
      return { ...before, isAdvised: true };
    case 'give up':
      return { ...before, isGivenUp: true };
  }
}

function reviewTold(hunt: Practice): ReviewTold {
  const { yours, best, steps } = review(hunt);
  return {
    yours,
    best,
    steps: steps.map(({ test, before, after, bits, better }) => ({
      test: test.words,
      before,
      after,
      bits,
      better: better?.test.words,
      betterBits: better?.bits
    }))
  };
}

/** What the page may know of a practice hunt: nothing of what is hidden before it is over. */
export function practiceTold({ hunt, isAdvised, isGivenUp }: Practising): PracticeTold {
  const left = leftIn(hunt).length;
  const isOver = left === 0 || isGivenUp;
  const words = new Map(suspectsOf(hunt.yard).map((suspect) => [suspect.name, wordsOf(suspect)]));
  return {
    level: hunt.level,
    seed: hunt.seed,
    symptoms: left === 0 ? '' : symptomsOf(hunt),
    cost: costOf(hunt),
    made: hunt.made,
    guesses: hunt.guesses.map(({ name, isRight }) => ({ words: words.get(name) ?? name, isRight })),
    left,
    isAdvised,
    advice: isAdvised && !isOver ? nextTest(huntOf(hunt))?.test.id : undefined,
    hidden: isOver ? hiddenIn(hunt).map((suspect) => suspectTold(suspect, 1)) : [],
    review: isOver ? reviewTold(hunt) : undefined
  };
}
