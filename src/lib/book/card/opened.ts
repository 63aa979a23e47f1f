import { roadsOf, wire, type Run, type Yard } from '../../yard';

/** Wires to open, and the road that is then tested: what runs beside them has to do by itself. */
export interface Opening {
  readonly open: readonly string[];
  readonly road: string;
}

const roadAt = (tag: string): string => tag.replace('return tag ', '');

/** A ring is opened at one end, its far road tested, then at the other. */
function ringOpenings(runs: readonly Run[], closing: Run): readonly Opening[] {
  const before = (tag: string) =>
    runs.find(({ id, from }) => from === tag && /^loop link .+-/.test(id));
  let first = closing.from;
  for (let link = before(first); link; link = before(first)) first = link.to;
  const way = runs.find(
    ({ id, from, to }) => from === first && to === closing.to && id !== closing.id
  );
  return [
    { open: [closing.id], road: roadAt(closing.from) },
    ...(way ? [{ open: [way.id], road: roadAt(first) }] : [])
  ];
}

/** Return contacts that share a plug: each is tried with the wires of the others lifted. */
function contactOpenings(yard: Yard, runs: readonly Run[]): readonly Opening[] {
  const all = runs.filter(({ id }) => id.startsWith('plug return ')).map(({ id }) => id);
  const road = roadsOf(yard).find(({ bed }) => bed === 'deck')?.name;
  if (all.length < 2 || road === undefined) return [];
  return all.map((id) => ({ open: all.filter((other) => other !== id), road }));
}

/** Two sections with a whole rail between them: each is tried with its own dropper lifted, over the rail and the other's. */
const sectionOpenings = (runs: readonly Run[]): readonly Opening[] =>
  runs.flatMap(({ id }): readonly Opening[] => {
    const [, rail, west, east] = /^(feed|return) joiner (.+)-(.+)$/.exec(id) ?? [];
    if (rail === undefined || west === undefined || east === undefined) return [];
    return [
      { open: [`${rail} dropper ${west}`], road: west },
      { open: [`${rail} dropper ${east}`], road: east }
    ];
  });

/** Every wire of a yard that hides what runs beside it. */
export function openings(yard: Yard): readonly Opening[] {
  const runs = wire(yard);
  return [
    ...runs
      .filter(({ id }) => id.startsWith('closing link'))
      .flatMap((each) => ringOpenings(runs, each)),
    ...contactOpenings(yard, runs),
    ...sectionOpenings(runs)
  ];
}
