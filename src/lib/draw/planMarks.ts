import { beyond, roadsOf, type Yard } from '../yard';
import type { Point } from './geometry';
import { HALF_GAUGE_MM, type PlanLayout } from './plan';

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
    const side = HALF_GAUGE_MM * layout.across;
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
