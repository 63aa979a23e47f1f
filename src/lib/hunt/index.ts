export { beyondWires, type Beyond } from './beyond';
export { outcomes, testsOf } from './board';
export { type Pair } from './candidates';
export { pairsOf, pairsWords, wrongReadings, type Pairs, type WrongReading } from './explain';
export { counselOf, type Counsel } from './counsel';
export {
  beginHunt,
  isUnexplained,
  otherWays,
  suspects,
  told,
  undone,
  type Against,
  type Hunt,
  type Suspected,
  type Told
} from './hunt';
export type { Figure, Outcome, Test } from './kinds';
export { meanings } from './meanings';
export { misleads } from './misleads';
export type { Moment } from './moment';
export { named, nextTest, readySteps, type Advice, type Meaning, type Progress } from './next';
export {
  costOf,
  guessed,
  hiddenIn,
  isOver,
  leftIn,
  practice,
  readingOf,
  symptomsOf,
  tested,
  type Guess,
  type Level,
  type Made,
  type Practice
} from './practice';
export { review, type Effort, type Review, type Step } from './review';
export { suspectsOf, type Suspect } from './suspects';
export { figureText, typed, type Typed } from './typed';
