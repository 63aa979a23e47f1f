export { MAX_ASK, MAX_LIT, MAX_STEPS, MAX_TITLE, MAX_WORDS } from './limits';
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
