import { beyond, roadsOf, type Yard } from '../yard';
import type { Point } from './geometry';
import { letterWidth } from './letters';
import type { PlanLayout, PlanRoad } from './plan';

/** Insulated gaps: a small break in each rail that is cut. */
export const planGaps = (
  yard: Yard,
  layout: PlanLayout
): readonly (Point & { readonly key: string })[] =>
  yard.cuts.flatMap(({ road, rail, atMm }) => {
    const west = roadsOf(yard).find(
      ({ whole, startMm, lengthMm }) => whole === road && startMm + lengthMm === atMm
    );
    const drawn = layout.roads.find((each) => each.road === west?.name);
    if (!drawn || drawn.east < drawn.west) return [];
    const side = layout.halfGauge;
    const rails = [
      ...(rail === 'feed' ? [] : [{ key: `return ${road} ${atMm}`, y: drawn.y - side }]),
      ...(rail === 'return' ? [] : [{ key: `feed ${road} ${atMm}`, y: drawn.y + side }])
    ];
    return rails.map((each) => ({ ...each, x: drawn.east }));
  });

/** End stops that are closed with the deck here. */
export const planStops = (
  yard: Yard,
  deckMm: number,
  layout: PlanLayout
): readonly (Point & { readonly road: string })[] =>
  roadsOf(yard)
    .filter(({ whole, bed }) => bed !== 'deck' && yard.endStops.includes(whole))
    .flatMap(({ name, bed }) => {
      const end = bed === 'west' ? 'east' : 'west';
      const drawn = layout.roads.find(({ road }) => road === name);
      if (!drawn || beyond(yard, deckMm, name, end).kind !== 'barrier') return [];
      return [{ road: name, x: drawn[end], y: drawn.y }];
    });

const LETTER_PX = letterWidth(14);
/** From a letter's middle to the name beside it, px; a loco's name reaches so far above its road. */
const BESIDE = 14;
const ABOVE = 24;

/** Half the height of the ring round a letter, and how far a loco's name lies above the loco, px. */
const LETTER_HALF = 10;
const NAME = { over: 3, height: 13 };

/** A loco as it is drawn, with the middle of its name. */
interface Drawn {
  readonly name: string;
  readonly y: number;
  readonly middle: number;
  readonly long: number;
  readonly wide: number;
  readonly title: number;
}

const nameHalf = (name: string): number => (name.length * LETTER_PX) / 2;

/** Middle of a loco's name: over the loco, but on a fixed road clear of the letters beyond its end. */
export function nameX(
  { west, east }: PlanRoad,
  { deck }: PlanLayout,
  { name, middle }: { readonly name: string; readonly middle: number }
): number {
  const half = nameHalf(name);
  if (west > deck.x + deck.width) return Math.min(middle, east - half);
  return east < deck.x ? Math.max(middle, west + half) : middle;
}

/** Whether a loco, or its name above it, would lie on a letter at a point. */
export function covers({ name, y, middle, long, wide, title }: Drawn, letter: Point): boolean {
  const near = (x: number, half: number) => Math.abs(x - letter.x) < half + LETTER_HALF;
  const up = y - letter.y - wide / 2 - NAME.over;
  if (y === letter.y) return near(middle, long / 2);
  return up > -LETTER_HALF && up < NAME.height + LETTER_HALF && near(title, nameHalf(name));
}

/** What stands on the plan, and where the letters are. */
interface Stands {
  readonly locos: readonly (Point & { readonly name: string; readonly long: number })[];
  readonly letterX: (road: PlanRoad) => number;
}

/** The owner's names of roads beside their letters, where there is room and no loco in the way. */
export const planTitles = ({ names }: Yard, { roads }: PlanLayout, { locos, letterX }: Stands) =>
  roads.flatMap((place) => {
    const text = names[place.road];
    if (!text) return [];
    const letter = letterX(place);
    const way = letter < (place.west + place.east) / 2 ? 1 : -1;
    const near = letter + way * BESIDE;
    const far = near + way * (text.length * LETTER_PX + 6);
    const [from, to] = [Math.min(near, far), Math.max(near, far)];
    const isTaken = locos.some(({ x, y, long, name }) => {
      const half = Math.max(long, name.length * LETTER_PX) / 2 + 4;
      return y >= place.y && y - place.y < ABOVE && x + half > from && x - half < to;
    });
    if (isTaken || from < place.west || to > place.east) return [];
    const anchor = way > 0 ? ('start' as const) : ('end' as const);
    const back = { x: from - 6, y: place.y - 8, width: to - from + 6 };
    return [{ road: place.road, text, back, x: near, y: place.y + 5, anchor }];
  });
