import * as v from 'valibot';
import { findPart, type Run } from '../runs';
import { editKind } from './kind';

const home = { 'feed dropper': 'feed', 'return dropper': 'return' } as const;

/** The far end of a dropper sits on the other leg. */
export const move = editKind({
  key: 'move',
  schema: v.strictObject({
    move: v.pipe(v.string(), v.regex(/^(feed|return) dropper /, 'a feed or return dropper')),
    to: v.picklist(['feed', 'return'], 'feed or return')
  }),
  apply(runs, edit) {
    findPart(runs, edit.move);
    const run = runs.find((each) => each.parts.some((part) => part.id === edit.move)) as Run;
    const end = `${edit.to} tag ${run.road}`;
    return runs.map((each) =>
      each !== run
        ? each
        : edit.move.startsWith('feed')
          ? { ...each, from: end }
          : { ...each, to: end }
    );
  },
  words(edit) {
    const leg = edit.move.startsWith('feed') ? home['feed dropper'] : home['return dropper'];
    return leg === edit.to
      ? `the ${edit.move} is where it belongs`
      : `the ${edit.move} is on the ${edit.to}`;
  },
  example: { move: 'return dropper A', to: 'feed' }
});
