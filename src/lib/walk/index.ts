export { changesOf, changeWords, type Change } from './changes';
export {
  compactWalk,
  filledPage,
  openWalk,
  openWalkFile,
  readWalk,
  walkFragment,
  walkText
} from './file';
export { MAX_ASK, MAX_LIT, MAX_STEPS, MAX_TITLE, MAX_WORDS } from './limits';
export { stepPlay, type StepPlay } from './play';
export { proseOf, type Block, type Span } from './prose';
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
