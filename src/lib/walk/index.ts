export { advice, stepAdvice, wholeAdvice } from './advice';
export { asLesson } from './asLesson';
export { askOf } from './ask';
export { answerOf } from './answered';
export { lessonHandout, pickedHandout, walkHandout, type Handout, type PaperCall } from './handout';
export {
  acted,
  admitWorkshop,
  heard,
  historyFrom,
  takenBack,
  type KeptWorkshop
} from './keptWorkshop';
export { plans, type Plan } from './plan';
export { letters, optionsOf, rightOf, roundOf, walkRounds, type Asking, type Round } from './round';
export { quietWord, votesIn, type Tally } from './tally';
export { changesOf, changeWords } from './changes';
export { GOOD_WORDS, MAX_ASK, MAX_LIT, MAX_STEPS, MAX_TITLE, MAX_WORDS } from './limits';
export { isThere, lightable } from './lit';
export { outline } from './outline';
export { plainText } from './plain';
export {
  compactWalk,
  filledPage,
  openWalk,
  openWalkFile,
  readWalk,
  walkFragment,
  walkText
} from './file';
export { boardOf, stepPlay, type StepPlay } from './play';
export { proseOf, type Block, type Span } from './prose';
export { walkStore } from './shelf';
export {
  admitWalk,
  WALK_FORMAT,
  walkFile,
  walkViews,
  type WalkCall,
  type WalkStep,
  type Walkthrough
} from './walkthrough';
export {
  begin,
  isRevealed,
  isTwin,
  step,
  voteOf,
  votesOn,
  wordFor,
  type Act,
  type Known,
  type Stage,
  type Stand
} from './workshop';
