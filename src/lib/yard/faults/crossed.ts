import * as v from 'valibot';
import { PlaceError, places, type Part, type Run } from '../runs';
import type { Yard } from '../yard';
import { faultKind } from './kind';
import { isPlugReturn, pairName, plugContacts, switchesOf } from './parts';

type At = 'plug' | 'tags';

/** The contacts behind which feeds can be exchanged. */
const contactsAt = (yard: Yard, at: At): readonly string[] =>
  at === 'tags' ? switchesOf(yard) : plugContacts(yard).filter((id) => !isPlugReturn(id));

const roadOf = (contact: string): string => contact.split(' ').at(-1) as string;

const kindsAt: Readonly<Record<At, readonly Part['kind'][]>> = {
  plug: ['plug'],
  tags: ['toggle', 'selector', 'push']
};

const road = v.pipe(v.union([v.string(), v.number()]), v.transform(String));

interface Cut {
  readonly run: Run;
  /** How many of its parts lead up to the cut. */
  readonly keep: number;
}

/** The feed that reaches a road by its own contact, cut behind that. */
function cutBehind(runs: readonly Run[], at: At, name: string): Cut {
  const isIt = ({ id, kind }: Part) => kindsAt[at].includes(kind) && roadOf(id) === name;
  const run = runs.find(({ job, parts }) => job === 'feed' && parts.some(isIt));
  if (!run) throw new PlaceError(`feed of road ${name} behind the ${at}`, places(runs));
  return { run, keep: run.parts.findIndex(isIt) + 1 };
}

/** A feed that goes on as the other behind the cut. */
const onAs = (mine: Cut, theirs: Cut): Run => ({
  ...mine.run,
  to: theirs.run.to,
  parts: [...mine.run.parts.slice(0, mine.keep), ...theirs.run.parts.slice(theirs.keep)]
});

/** Two feeds exchanged behind their plug contacts, or behind their toggles' tags: each goes on as the other. */
export const crossed = faultKind({
  key: 'crossed',
  schema: v.strictObject({
    crossed: v.tuple([road, road], 'two roads, such as [A, B]'),
    at: v.picklist(['plug', 'tags'], 'plug or tags')
  }),
  places: (yard) =>
    (['plug', 'tags'] as const).flatMap((at) => {
      const names = contactsAt(yard, at).map(roadOf);
      return names.flatMap((one, index) =>
        names.slice(index + 1).map((other) => ({ crossed: [one, other] as [string, string], at }))
      );
    }),
  place: (fault) => `${pairName(fault.crossed)} at the ${fault.at}`,
  at: ({ crossed }) => crossed.map((name) => `feed dropper ${name}`),
  change(runs, { crossed: [one, other], at }) {
    const a = cutBehind(runs, at, one);
    const b = cutBehind(runs, at, other);
    return runs.map((run) => (run === a.run ? onAs(a, b) : run === b.run ? onAs(b, a) : run));
  },
  words: ({ crossed: [one, other], at }) =>
    `the feeds of roads ${one} and ${other} are exchanged at the ${at === 'plug' ? 'plug' : 'toggles'}`,
  repair: ({ crossed: [one, other], at }) =>
    `exchange the wires of roads ${one} and ${other} at the ${at === 'plug' ? 'plug' : 'toggles'}`,
  example: { crossed: ['A', 'B'], at: 'plug' }
});
