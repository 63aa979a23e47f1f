import * as v from 'valibot';
import { contacts } from '../tables';
import { quantity } from './border';
import type { Road } from './road';
import type { Run } from './runs';

/** Shortest section, mm: no loco's pick-ups reach over a whole one by far. Source: common practice. */
const SHORTEST_MM = 100;

/** An insulated gap in one rail of a road, or in both, mm from the road's west end. */
export const CutSchema = v.strictObject({
  road: v.pipe(v.union([v.string(), v.number()], 'the name of a road'), v.transform(String)),
  rail: v.optional(v.picklist(['feed', 'return', 'both'], 'feed, return or both'), 'feed'),
  atMm: quantity(SHORTEST_MM, 10_000, 'mm')
});
type Cut = v.InferOutput<typeof CutSchema>;
type Cuts = readonly Cut[];

/** What a cut has to keep, in words. */
export const cutsAllowed = `cuts in roads of this yard, each section at least ${SHORTEST_MM} mm long`;

const cutsOf = (cuts: Cuts, road: string): Cuts =>
  cuts.filter((cut) => cut.road === road).sort((a, b) => a.atMm - b.atMm);

/** Whether every cut lies in one of these roads and leaves no section too short. */
export const cutsFit = (cuts: Cuts, roads: readonly Road[]): boolean =>
  cuts.every(({ road }) => roads.some(({ name }) => name === road)) &&
  roads
    .flatMap((road) => sectionsOf(road, cuts))
    .every(({ lengthMm, next }) => lengthMm >= SHORTEST_MM || !(next.west ?? next.east));

/** A section's name: A1, A2 from the west; 1a, 1b where the road's own name is a number. */
const sectionName = (road: string, index: number): string =>
  /\d$/.test(road) ? `${road}${'abcdefghij'[index]}` : `${road}${index + 1}`;

/** The sections of a road, west to east: the road itself where it is not cut. */
export function sectionsOf(road: Road, cuts: Cuts): readonly Road[] {
  const own = cutsOf(cuts, road.name);
  if (own.length === 0) return [road];
  const ends = [...own.map(({ atMm }) => atMm), road.lengthMm];
  return ends.map((end, index) => {
    const startMm = ends[index - 1] ?? 0;
    const next = {
      ...(index > 0 ? { west: sectionName(road.name, index - 1) } : {}),
      ...(index < own.length ? { east: sectionName(road.name, index + 1) } : {})
    };
    return {
      ...road,
      name: sectionName(road.name, index),
      lengthMm: end - startMm,
      startMm,
      next
    };
  });
}

/** The rail which a cut leaves whole is joined from section to section by a rail joiner. */
export const joinerRuns = (cuts: Cuts): readonly Run[] =>
  [...new Set(cuts.map(({ road }) => road))].flatMap((road) =>
    cutsOf(cuts, road).flatMap(({ rail }, index): readonly Run[] => {
      if (rail === 'both') return [];
      const whole = rail === 'feed' ? 'return' : 'feed';
      const [west, east] = [sectionName(road, index), sectionName(road, index + 1)];
      const id = `${whole} joiner ${west}-${east}`;
      const { ohms } = contacts['rail joiner'];
      return [
        {
          id,
          from: `${whole} rail ${west}`,
          to: `${whole} rail ${east}`,
          job: whole,
          parts: [{ id, kind: 'wire', ohms, closed: true }]
        }
      ];
    })
  );
