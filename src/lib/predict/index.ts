export { chanceOf, type Chance } from './fresh/chance';
export { fresh, wrongWords } from './fresh/fresh';
export { families } from './fresh';
export type { Asked, Played } from './kinds/kind';
export { play, watch, WATCH_SECONDS } from './play';
export {
  answer,
  answerKey,
  asked,
  hides,
  questionEntries,
  QuestionError,
  questionKeys,
  type Question
} from './question';
export { because, happened, lampBecause, probeBecause } from './words';
export { way } from './way';
