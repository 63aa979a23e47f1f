import type { LampState, Reading, Yard } from '../yard';
import type { Point } from './geometry';
import type { Glyph } from './run';

/** A panel lamp beside its road's switch. */
export interface LampPlace {
  readonly road: string;
  readonly at: Point;
  /** Middle of the switch. */
  readonly switch: Point;
}

/** Room that lamps take above each row, px. */
export const LAMP_ROOM = 22;
const ABOVE = 44;
/** East of the switch's middle: room for the lamp's pole, or for its tap behind the switch. */
const ASIDE = { own: 14, track: 31 } as const;

/** Where the lamps stand: above the switches that work them. */
export const lampPlaces = (
  { lamps }: Yard,
  roads: readonly string[],
  glyphs: readonly Glyph[]
): readonly LampPlace[] =>
  lamps === 'none'
    ? []
    : roads.flatMap((road) => {
        const glyph = glyphs.find(({ id }) => id === `toggle ${road}` || id === `selector ${road}`);
        if (!glyph) return [];
        const { x, y } = glyph.middle;
        return [{ road, at: { x: x + ASIDE[lamps], y: y - ABOVE }, switch: glyph.middle }];
      });

/** How a road's lamp may be shown: undefined while that is not told. A lamp fed from its road tells of the road. */
export function lampShown(
  { yard, reading }: { readonly yard: Yard; readonly reading: Reading },
  untold: readonly string[],
  road: string
): LampState | undefined {
  const hidden =
    untold.includes(`lamp ${road}`) || (yard.lamps === 'track' && untold.includes(road));
  return hidden ? undefined : reading.lamp(road);
}
