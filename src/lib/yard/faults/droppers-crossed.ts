import * as v from 'valibot';
import { findPart } from '../runs';
import { roads } from '../road';
import { faultKind } from './kind';

const droppersOf = (road: string): readonly [string, string] => [
  `feed dropper ${road}`,
  `return dropper ${road}`
];

/** The two droppers of a road are exchanged at its rails. */
export const droppersCrossed = faultKind({
  key: 'droppersCrossed',
  schema: v.strictObject({
    droppersCrossed: v.pipe(
      v.union([v.string(), v.number()], 'the letter of a road'),
      v.transform(String)
    )
  }),
  places: (yard) => roads(yard).map((droppersCrossed) => ({ droppersCrossed })),
  place: (fault) => fault.droppersCrossed,
  at: (fault) => droppersOf(fault.droppersCrossed),
  change(runs, { droppersCrossed: road }) {
    const [feed, home] = droppersOf(road);
    const [out, back] = [findPart(runs, feed).to, findPart(runs, home).from];
    const has = (id: string) => (part: { readonly id: string }) => part.id === id;
    return runs.map((run) => {
      if (run.parts.some(has(feed))) return { ...run, to: back };
      return run.parts.some(has(home)) ? { ...run, from: out } : run;
    });
  },
  words: (fault) => `the feed and return droppers of road ${fault.droppersCrossed} are exchanged`,
  repair: (fault) => `exchange the two droppers of road ${fault.droppersCrossed} at the rails`,
  example: { droppersCrossed: 'A' }
});
