import type { Lives } from './live';
import type { Cone } from './loop';
import type { Hands } from './settings';
import type { Rails, Wiring } from './wiring';

/** The contact of a way through a loco that may always stand there, or through a lamp. */
export const LOAD = -1;
/** The contact of a way through the wheels of a loco that may stand across a joint. */
const WHEELS = -2;

/** A way from one conductor to another. */
export interface Way {
  readonly to: number;
  /** Index of the switched contact; `LOAD` or wheels for one that may always be there. */
  readonly contact: number;
}

/** The conductors of one moment: the wiring with some pin contacts made, and locos across the joints. */
export interface Network {
  readonly wiring: Wiring;
  /** The number that stands for a conductor in this moment. */
  readonly rep: (conductor: number) => number;
  /** What lies next to a conductor; its `to` is still to be looked up by `rep`. */
  readonly ways: (conductor: number) => readonly Way[];
  /** The conductors that a number stands for. */
  readonly members: (rep: number) => Iterable<number>;
  /** Conductors that this moment joins, or lays wheels between. */
  readonly changed: readonly number[];
  /** What was found out about its roads, for the many moments that share it. */
  readonly known: Known;
}

/** By road and source: what has a say about a road, the controls it may depend on, and when it is live; by road: the fewest hands that do. */
export interface Known {
  readonly cones: Map<string, Cone>;
  readonly controls: Map<string, readonly number[] | undefined>;
  readonly lives: Map<string, Lives>;
  readonly hands: Map<string, Hands | undefined>;
}

const nothingKnown = (): Known => ({
  cones: new Map(),
  controls: new Map(),
  lives: new Map(),
  hands: new Map()
});

type Pair = readonly [number, number];

const NO_WAYS: readonly Way[] = [];

/** What lies next to each conductor while every pin contact is open and no loco stands across a joint. */
export function plainNetwork(wiring: Wiring): Network {
  const ways: Way[][] = [];
  const lay = (a: number, b: number, contact: number) => {
    (ways[a] ??= []).push({ to: b, contact });
    (ways[b] ??= []).push({ to: a, contact });
  };
  wiring.switched.forEach(({ a, b }, index) => lay(a, b, index));
  for (const { feed, home } of wiring.rails.values()) lay(feed, home, LOAD);
  for (const [a, b] of wiring.loads) lay(a, b, LOAD);
  return {
    wiring,
    rep: (conductor) => conductor,
    ways: (conductor) => ways[conductor] ?? NO_WAYS,
    members: (rep) => [rep],
    changed: [],
    known: nothingKnown()
  };
}

/** Pieces into which the terminals part a plain network. */
export interface Pieces {
  /** The piece of each conductor; a terminal is in none. */
  readonly of: readonly number[];
  /** The terminals beside each piece. */
  readonly beside: ReadonlyMap<number, ReadonlySet<number>>;
}

/** The piece of a terminal. */
export const NO_PIECE = -1;

/**
 * Parts a plain network at its terminals: no way leads from one piece to another except past a terminal.
 * With several sources each terminal is a way for the others, and parts nothing.
 */
export function piecesOf({ wiring, ways }: Network): Pieces {
  const ends = new Set(wiring.sources.length > 1 ? [] : wiring.sources.flat());
  const of: number[] = [];
  const beside = new Map<number, Set<number>>();
  for (const end of ends) of[end] = NO_PIECE;
  for (let start = 0; start < wiring.conductors; start++) {
    if (of[start] !== undefined) continue;
    const met = new Set<number>();
    const queue = [start];
    of[start] = start;
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      for (const { to } of ways(at)) {
        if (ends.has(to)) met.add(to);
        else if (of[to] === undefined) {
          of[to] = start;
          queue.push(to);
        }
      }
    }
    beside.set(start, met);
  }
  return { of, beside };
}

/** Conductors that are joined, gathered. */
export function gathered(pairs: readonly Pair[]): readonly ReadonlySet<number>[] {
  const groups: Set<number>[] = [];
  for (const pair of pairs) {
    const touched = groups.filter((group) => pair.some((each) => group.has(each)));
    for (const each of touched) groups.splice(groups.indexOf(each), 1);
    groups.push(new Set([...pair, ...touched.flatMap((each) => [...each])]));
  }
  return groups;
}

/** The same with some pairs of conductors made one, and wheels that may lie between others. */
export function momentNetwork(
  plain: Network,
  joined: readonly Pair[],
  wheels: readonly Pair[]
): Network {
  if (joined.length === 0 && wheels.length === 0) return plain;
  const reps = new Map<number, number>();
  const own = new Map<number, readonly Way[]>();
  const groups = new Map<number, ReadonlySet<number>>();
  for (const group of gathered(joined)) {
    const rep = Math.min(...group);
    groups.set(rep, group);
    for (const each of group) reps.set(each, rep);
    own.set(
      rep,
      [...group].flatMap((each) => plain.ways(each))
    );
  }
  const rep = (conductor: number) => reps.get(conductor) ?? conductor;
  const ways = (conductor: number) => own.get(conductor) ?? plain.ways(conductor);
  for (const [a, b] of wheels.map((pair) => pair.map(rep) as [number, number])) {
    own.set(a, [...ways(a), { to: b, contact: WHEELS }]);
    own.set(b, [...ways(b), { to: a, contact: WHEELS }]);
  }
  return {
    wiring: plain.wiring,
    rep,
    ways,
    members: (conductor) => groups.get(conductor) ?? [conductor],
    changed: [...joined, ...wheels].flat(),
    known: nothingKnown()
  };
}

/** Pairs of conductors between which the wheels of a loco lie while it stands across a joint. */
export const acrossPairs = (a: Rails, b: Rails): readonly Pair[] => [
  [a.feed, b.feed],
  [a.home, b.home]
];
