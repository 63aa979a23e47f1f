import type { Rails, Wiring } from './wiring';

/** A way from one conductor to another: through a switched contact, or through a load. */
export interface Way {
  readonly to: number;
  /** Index of the switched contact; −1 for a loco, which may always stand there, or a lamp. */
  readonly contact: number;
}

/** The conductors of one moment: the wiring with some pin contacts made and some rails joined by wheels. */
export interface Network {
  readonly wiring: Wiring;
  /** The number that stands for a conductor in this moment. */
  readonly rep: (conductor: number) => number;
  /** What lies next to a conductor; its `to` is still to be looked up by `rep`. */
  readonly ways: (conductor: number) => readonly Way[];
}

type Pair = readonly [number, number];

/** What lies next to each conductor while every pin contact is open and no loco stands across a joint. */
export function plainNetwork(wiring: Wiring): Network {
  const ways: Way[][] = Array.from({ length: wiring.conductors }, () => []);
  const lay = (a: number, b: number, contact: number) => {
    ways[a]?.push({ to: b, contact });
    ways[b]?.push({ to: a, contact });
  };
  wiring.switched.forEach(({ a, b }, index) => lay(a, b, index));
  for (const { feed, home } of wiring.rails.values()) lay(feed, home, -1);
  for (const [a, b] of wiring.loads) lay(a, b, -1);
  return { wiring, rep: (conductor) => conductor, ways: (conductor) => ways[conductor] ?? [] };
}

/** The same with these pairs of conductors made one. */
export function joinedNetwork(plain: Network, pairs: readonly Pair[]): Network {
  if (pairs.length === 0) return plain;
  const groups: Set<number>[] = [];
  for (const pair of pairs) {
    const touched = groups.filter((group) => pair.some((each) => group.has(each)));
    const group = new Set([...pair, ...touched.flatMap((each) => [...each])]);
    for (const each of touched) groups.splice(groups.indexOf(each), 1);
    groups.push(group);
  }
  const reps = new Map<number, number>();
  const merged = new Map<number, readonly Way[]>();
  for (const group of groups) {
    const rep = Math.min(...group);
    for (const each of group) reps.set(each, rep);
    merged.set(
      rep,
      [...group].flatMap((each) => plain.ways(each))
    );
  }
  return {
    wiring: plain.wiring,
    rep: (conductor) => reps.get(conductor) ?? conductor,
    ways: (conductor) => merged.get(conductor) ?? plain.ways(conductor)
  };
}

/** Pairs of conductors that the wheels of a loco make one while it stands across a joint of two roads. */
export const acrossPairs = (a: Rails, b: Rails): readonly Pair[] => [
  [a.feed, b.feed],
  [a.home, b.home]
];
