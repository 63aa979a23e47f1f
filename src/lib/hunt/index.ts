export { outcomes, testsOf } from './board';
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
export type { Outcome, Test } from './kinds';
export { meanings } from './meanings';
export type { Moment } from './moment';
export { named, nextTest, type Advice, type Meaning } from './next';
export { suspectsOf, type Suspect } from './suspects';
