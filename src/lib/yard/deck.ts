import { once } from './once';
import { roadsOf, wholeRoads, type Road } from './road';
import type { Yard } from './yard';

/** A hole of the locating plate: the deck position at which the pin goes home in it. */
export interface Hole {
  readonly name: string;
  /** Deck position, mm: 0 when the first deck road is in line with the running road Q, negative further north. */
  readonly deckMm: number;
  /** The fixed road which a deck road faces there; both whole roads, cut or not. */
  readonly fixed: string;
  readonly deckRoad: string;
}

/** How far the deck can go, mm: until the last deck road is in line with the northernmost running road. */
export function travel(yard: Yard): { readonly least: number; readonly most: number } {
  const all = wholeRoads(yard);
  const last = all.filter(({ bed }) => bed === 'deck').at(-1) as Road;
  const north = all.filter(({ kind }) => kind === 'running').map(({ southMm }) => southMm);
  return { least: Math.min(0, ...north) - last.southMm, most: 0 };
}

/**
 * The holes of the locating plate. A running hole has the name of the deck road that it brings to
 * the running road (`A at QQ` to a second one); a stabling hole has the name of the stabling road
 * which the yard's chosen deck road faces. Two that lie in one place are one hole for the pin.
 */
export const holes = once((yard: Yard): readonly Hole[] => {
  const all = wholeRoads(yard);
  const deck = all.filter(({ bed }) => bed === 'deck');
  const facing = deck.find(({ name }) => name === yard.facesStabling) as Road;
  const running = all.filter(({ kind }) => kind === 'running');
  return [
    ...running.flatMap((fixed, index) =>
      deck.map((road): Hole => ({
        name: index === 0 ? road.name : `${road.name} at ${fixed.name}`,
        deckMm: fixed.southMm - road.southMm,
        fixed: fixed.name,
        deckRoad: road.name
      }))
    ),
    ...all
      .filter(({ kind }) => kind === 'stabling')
      .map((fixed): Hole => ({
        name: fixed.name,
        deckMm: fixed.southMm - facing.southMm,
        fixed: fixed.name,
        deckRoad: facing.name
      }))
  ];
});

/** The holes that lie under the pin with the deck here: several where stops of two fixed roads are one place. */
export const holesAt = (yard: Yard, deckMm: number): readonly Hole[] =>
  holes(yard).filter((hole) => Math.abs(hole.deckMm - deckMm) <= yard.toleranceMm);

/** The hole in which the pin can go home with the deck here, if any. */
export const holeAt = (yard: Yard, deckMm: number): Hole | undefined => holesAt(yard, deckMm)[0];

/** A deck road in line with a fixed road (of cut ones the sections that meet), and the end of the deck at which they do. */
export interface Facing {
  readonly deckRoad: string;
  readonly fixed: string;
  readonly end: 'west' | 'east';
}

/** What faces what with the deck here: within tolerance sideways; anything else faces nothing. */
export function facing(yard: Yard, deckMm: number): readonly Facing[] {
  const all = roadsOf(yard);
  const deck = all.filter(({ bed }) => bed === 'deck');
  return all.flatMap((fixed) => {
    const end = fixed.bed;
    if (end === 'deck' || fixed.next[end === 'west' ? 'east' : 'west']) return [];
    return deck
      .filter((road) => !road.next[end])
      .filter((road) => Math.abs(road.southMm + deckMm - fixed.southMm) <= yard.toleranceMm)
      .map((road) => ({ deckRoad: road.name, fixed: fixed.name, end }));
  });
}

/** What lies beyond one end of a road. */
export type Beyond =
  | { readonly kind: 'road'; readonly road: string }
  | { readonly kind: 'gap' }
  | { readonly kind: 'barrier' }
  | { readonly kind: 'backstop' };

/**
 * What a loco meets at the end of a road, or of a section. A fixed road's deck end faces a deck road,
 * or the gap, or a stop that closes there whenever nothing faces it. A deck road's end is closed by a barrier, except at the opening of a fixed road: there it
 * faces that road, or, out of line, the gap.
 */
export function beyond(yard: Yard, deckMm: number, name: string, end: 'west' | 'east'): Beyond {
  const all = roadsOf(yard);
  const road = all.find((each) => each.name === name) as Road;
  const next = road.next[end];
  if (next !== undefined) return { kind: 'road', road: next };
  const pairs = facing(yard, deckMm);
  if (road.bed !== 'deck') {
    if (road.bed === end) return { kind: 'backstop' };
    const pair = pairs.find(({ fixed }) => fixed === name);
    if (pair) return { kind: 'road', road: pair.deckRoad };
    return { kind: yard.endStops.includes(road.whole) ? 'barrier' : 'gap' };
  }
  const pair = pairs.find((each) => each.deckRoad === name && each.end === end);
  if (pair) return { kind: 'road', road: pair.fixed };
  const side = road.southMm + deckMm;
  const opening = all.some(
    (fixed) => fixed.bed === end && Math.abs(fixed.southMm - side) < yard.openingMm / 2
  );
  return { kind: opening ? 'gap' : 'barrier' };
}
