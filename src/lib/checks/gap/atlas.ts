import type { Moment } from './moments';
import type { OpenEnd } from './places';

/** An end, and the first moment of each kind in which it is open, with the pin home and out. */
export interface OpenAt {
  readonly end: OpenEnd;
  readonly home: ReadonlyMap<number, Moment>;
  readonly out: ReadonlyMap<number, Moment>;
}

/** The moments of a yard, gathered by what they join. */
export interface Atlas {
  readonly moments: readonly Moment[];
  /** One moment of each kind: those of a kind have the same joints and holes, and the pin alike. */
  readonly kinds: readonly Moment[];
  /** The kind of each moment. */
  readonly kindOf: readonly number[];
  /** Roads with an open end, by moment. */
  readonly open: readonly (readonly string[])[];
  /** Moments in which a road has an open end. */
  readonly openAt: ReadonlyMap<string, readonly number[]>;
  /** Each end that is open in some moment. */
  readonly ends: readonly OpenAt[];
  /** Kinds in which a road is part of a joint. */
  readonly facingIn: ReadonlyMap<string, readonly number[]>;
}

/** Puts an item into the list under a key. */
export function file<K, T>(lists: Map<K, T[]>, key: K, item: T): void {
  const list = lists.get(key);
  if (list) list.push(item);
  else lists.set(key, [item]);
}

const kindKey = ({ place: { joints, holes }, pin }: Moment): string =>
  JSON.stringify([joints, holes, pin]);

export const endKey = ({ road, end }: OpenEnd): string => `${road} ${end}`;

export function atlasOf(moments: readonly Moment[]): Atlas {
  const kinds = new Map<string, { readonly index: number; readonly moment: Moment }>();
  const openAt = new Map<string, number[]>();
  const ends = new Map<string, Record<Moment['pin'], Map<number, Moment>> & { end: OpenEnd }>();
  const facingIn = new Map<string, number[]>();
  const kindOf = moments.map((moment) => {
    const key = kindKey(moment);
    const known = kinds.get(key) ?? { index: kinds.size, moment };
    kinds.set(key, known);
    return known.index;
  });
  const open = moments.map(({ place }) => [...new Set(place.open.map(({ road }) => road))]);
  open.forEach((roads, index) => roads.forEach((road) => file(openAt, road, index)));
  moments.forEach((moment, index) => {
    const kind = kindOf[index] as number;
    for (const end of moment.place.open) {
      const known = ends.get(endKey(end)) ?? { end, home: new Map(), out: new Map() };
      ends.set(endKey(end), known);
      if (!known[moment.pin].has(kind)) known[moment.pin].set(kind, moment);
    }
  });
  const all = [...kinds.values()].map(({ moment }) => moment);
  all.forEach(({ place }, kind) => {
    const facing = new Set(place.joints.flatMap(({ fixed, deckRoad }) => [fixed, deckRoad]));
    for (const road of facing) file(facingIn, road, kind);
  });
  return { moments, kinds: all, kindOf, open, openAt, ends: [...ends.values()], facingIn };
}
