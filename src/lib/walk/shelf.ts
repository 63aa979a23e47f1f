import { storeOf } from '../share';
import { readWalk } from './file';
import { admitWalk, walkFile, type Walkthrough } from './walkthrough';

/** The walkthroughs of this device. */
export const walkStore = storeOf<Walkthrough>({
  keys: 'ohmyard.walk.',
  aside: 'ohmyard.aside.walk.',
  noun: 'walkthrough',
  text: (walk) => JSON.stringify(walkFile(walk)),
  read: readWalk,
  nameOf: ({ title }) => title,
  named: (walk, title) => admitWalk(walkFile({ ...walk, title }))
});
