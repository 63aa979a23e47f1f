export { advice, stepAdvice, wholeAdvice, type Advice } from './advice';
export { asLesson } from './asLesson';
export { askOf } from './ask';
export { answerOf, sceneAfter } from './answered';
export { changesOf, changeWords, type Change } from './changes';
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
export { walkStore, type KeptWalk } from './shelf';
export {
  admitWalk,
  WALK_FORMAT,
  walkFile,
  WalkSchema,
  walkViews,
  type WalkCall,
  type WalkStep,
  type Walkthrough
} from './walkthrough';
