import * as v from 'valibot';
import { findPart, type Run } from '../runs';
import { faultKind } from './kind';
import { isPlugReturn, pairName, partsOf } from './parts';

const contactAt = { plug: 'plug', tags: 'toggle' } as const;

const road = v.pipe(v.union([v.string(), v.number()]), v.transform(String));

/** The run with the contact `id`, and how many of its parts lead up to it. */
function cutAfter(runs: readonly Run[], id: string): { readonly run: Run; readonly keep: number } {
  findPart(runs, id);
  const run = runs.find(({ parts }) => parts.some((part) => part.id === id)) as Run;
  return { run, keep: run.parts.findIndex((part) => part.id === id) + 1 };
}

/** Two feeds exchanged behind their plug contacts, or behind their toggles' tags: each goes on as the other. */
export const crossed = faultKind({
  key: 'crossed',
  schema: v.strictObject({
    crossed: v.tuple([road, road], 'two roads, such as [A, B]'),
    at: v.picklist(['plug', 'tags'], 'plug or tags')
  }),
  places: (yard) =>
    (['plug', 'tags'] as const).flatMap((at) => {
      const names = partsOf(yard, contactAt[at])
        .filter((id) => !isPlugReturn(id))
        .map((id) => id.slice(contactAt[at].length + 1));
      return names.flatMap((one, index) =>
        names.slice(index + 1).map((other) => ({ crossed: [one, other] as [string, string], at }))
      );
    }),
  place: (fault) => `${pairName(fault.crossed)} at the ${fault.at}`,
  change(runs, { crossed: [one, other], at }) {
    const [a, b] = [one, other].map((name) => cutAfter(runs, `${contactAt[at]} ${name}`)) as [
      ReturnType<typeof cutAfter>,
      ReturnType<typeof cutAfter>
    ];
    const onAs = (mine: typeof a, theirs: typeof a): Run => ({
      ...mine.run,
      to: theirs.run.to,
      parts: [...mine.run.parts.slice(0, mine.keep), ...theirs.run.parts.slice(theirs.keep)]
    });
    return runs.map((run) => (run === a.run ? onAs(a, b) : run === b.run ? onAs(b, a) : run));
  },
  words: ({ crossed: [one, other], at }) =>
    `the feeds of roads ${one} and ${other} are exchanged at the ${at === 'plug' ? 'plug' : 'toggles'}`,
  repair: ({ crossed: [one, other], at }) =>
    `exchange the wires of roads ${one} and ${other} at the ${at === 'plug' ? 'plug' : 'toggles'}`,
  example: { crossed: ['A', 'B'], at: 'plug' }
});
