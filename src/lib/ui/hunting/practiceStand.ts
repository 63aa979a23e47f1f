import {
  costOf,
  counselOf,
  guessed,
  hiddenIn,
  leftIn,
  practice,
  review,
  suspectsOf,
  symptomsOf,
  tested,
  type Practice,
  type Suspect
} from '../../hunt';
import type { PracticeNotes } from '../../share';
import type { Yard } from '../../yard';
import { suspectTold, wordsOf } from './huntStand';
import type { NamedTold, PracticeAsk, PracticeTold, ReviewTold } from './huntTold';

/** A practice hunt, whether advice was asked for since the last test, and whether it was given up. */
export interface Practising {
  readonly hunt: Practice;
  readonly isAdvised: boolean;
  readonly isGivenUp: boolean;
}

const nameTold = (suspect: Suspect) => ({ name: suspect.name, words: wordsOf(suspect) });

/** Every suspect that can be named. */
export const namesOf = (yard: Yard): readonly NamedTold[] =>
  suspectsOf(yard).flatMap((suspect) =>
    suspect.fault
      ? [
          {
            ...nameTold(suspect),
            place: suspect.name.replace(/^[^:]+: /, '')
          }
        ]
      : []
  );

/** What was done in a kept hunt, done again. @throws RangeError for what the yard does not have. */
function replayed(yard: Yard, { level, seed, made, guesses }: PracticeNotes): Practice {
  const until = (hunt: Practice, count: number): Practice =>
    hunt.made.length < count
      ? until(tested(hunt, made[hunt.made.length]?.test ?? ''), count)
      : hunt;
  const named = guesses.reduce(
    (hunt, { name, after }) => guessed(until(hunt, after), name),
    practice(yard, level, seed)
  );
  return until(named, made.length);
}

const seenOf = (hunt: Practice): string => symptomsOf({ ...hunt, guesses: [] });

/** What was told in a hunt, to be compared. */
interface WasTold {
  readonly seen: string;
  readonly made: readonly { readonly outcome: string; readonly figure?: string | undefined }[];
  readonly guesses: readonly { readonly isRight: boolean }[];
}

const inOne = ({ seen, made, guesses }: WasTold): string =>
  JSON.stringify([
    seen,
    made.map(({ outcome, figure }) => [outcome, figure]),
    guesses.map(({ isRight }) => isRight)
  ]);

/** A kept hunt taken up again; undefined where this yard does not show what was told. */
export function resumed(yard: Yard, kept: PracticeNotes): Practising | undefined {
  try {
    const hunt = replayed(yard, kept);
    const isSame = inOne({ ...hunt, seen: seenOf(hunt) }) === inOne(kept);
    return isSame ? { hunt, isAdvised: false, isGivenUp: kept.isGivenUp } : undefined;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** The practice hunt after something is done. @throws RangeError where none has begun. */
export function practised(
  yard: Yard,
  before: Practising | undefined,
  ask: Exclude<PracticeAsk, { do: 'resume' }>
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
  const { yours, best, steps, weakest } = review(hunt);
  return {
    yours,
    best,
    weakest,
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
  const counsel = isAdvised && !isOver ? counselOf(hunt) : undefined;
  const advice = counsel?.best()?.test.id;
  const words = new Map(suspectsOf(hunt.yard).map((suspect) => [suspect.name, wordsOf(suspect)]));
  return {
    level: hunt.level,
    seed: hunt.seed,
    seen: seenOf(hunt),
    symptoms: left === 0 ? '' : symptomsOf(hunt),
    cost: costOf(hunt),
    made: hunt.made,
    guesses: hunt.guesses.map((each) => ({ ...each, words: words.get(each.name) ?? each.name })),
    isGivenUp,
    left,
    isAdvised,
    advice,
    names: advice === undefined ? (counsel?.names() ?? []).map(nameTold) : [],
    hidden: isOver ? hiddenIn(hunt).map((suspect) => suspectTold(suspect, 1)) : [],
    review: isOver ? reviewTold(hunt) : undefined
  };
}
