import { placed, PlaceError, type Part, type Run } from './runs';

/** A place where a probe can be held: a terminal, a rail, a tag, or one side of a contact. */
export interface Point {
  readonly id: string;
  /** What a modeller calls it: "toggle B, rail side". */
  readonly name: string;
  readonly node: string;
  /** The road it belongs to; points of the whole yard have none. */
  readonly road?: string;
}

const terminals: Readonly<Record<string, string>> = {
  feed: "the controller's feed",
  'feed 2': "the second controller's feed",
  return: "the controller's return",
  'deck joint': "the deck's return joint",
  'return joint': 'the return joint'
};

/** A point's plain name from its id: "toggle B rail side" is "toggle B, rail side". */
export const pointName = (id: string): string =>
  terminals[id] ?? id.replace(/ (panel|rail|fixed|deck) side$/, ', $1 side');

/** Names of a part's two sides, that of the supply first. */
export const sidesOf = ({ kind }: Pick<Part, 'kind'>): readonly [string, string] =>
  kind === 'plug' ? ['fixed side', 'deck side'] : ['panel side', 'rail side'];

const hasSides = ({ kind }: Part): boolean =>
  ['toggle', 'pin contact', 'plug', 'resistor', 'meter'].includes(kind);

/** Ids and nodes of the two sides of every part of a run that can be probed. */
function partEnds(run: Run): readonly (readonly [string, string])[] {
  return placed(run)
    .filter(hasSides)
    .flatMap((part) => {
      const [near, far] = sidesOf(part);
      const [supply, rail] = run.job === 'feed' ? [part.from, part.to] : [part.to, part.from];
      return [
        [`${part.id} ${near}`, supply],
        [`${part.id} ${far}`, rail]
      ] as const;
    });
}

/** Every place of these runs where a probe can be held, each with its node; points of a road follow one another. */
export function points(runs: readonly Run[]): readonly Point[] {
  const found = new Map<string, Point>();
  const add = (id: string, node: string, road?: string) => {
    if (!found.has(id)) {
      found.set(id, { id, name: pointName(id), node, ...(road === undefined ? {} : { road }) });
    }
  };
  for (const run of runs) {
    if (run.road !== undefined) continue;
    for (const node of [run.from, run.to]) if (node in terminals) add(node, node);
    for (const [id, node] of partEnds(run)) add(id, node);
  }
  for (const run of runs) {
    if (run.road === undefined) continue;
    if (run.job === 'feed') add(`feed tag ${run.road}`, `feed tag ${run.road}`, run.road);
    for (const [id, node] of partEnds(run)) add(id, node, run.road);
    if (run.job === 'lamp') continue;
    add(`${run.job} rail ${run.road}`, `${run.job} rail ${run.road}`, run.road);
    if (run.job === 'return') add(`return tag ${run.road}`, `return tag ${run.road}`, run.road);
  }
  return [...found.values()];
}

/** The roads that an instrument's two probes touch. */
export const probedRoads = (runs: readonly Run[], { from, to }: Run): readonly string[] =>
  points(runs).flatMap(({ node, road }) =>
    road !== undefined && (node === from || node === to) ? [road] : []
  );

/** The point `id`; throws PlaceError when these runs have none. */
export function findPoint(runs: readonly Run[], id: string): Point {
  const all = points(runs);
  const point = all.find((each) => each.id === id);
  if (!point)
    throw new PlaceError(
      id,
      all.map((each) => each.id)
    );
  return point;
}
