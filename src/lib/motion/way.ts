import { eastMm, vehicles, type Scene, type Yard } from '../yard';

/** What one can see a vehicle do. */
export type Way = 'stays' | 'west' | 'east';

/** Less than this is not seen to move, mm. Source: common practice. */
export const SEEN_MM = 3;

/** What a vehicle did between two scenes. */
export function way(
  { yard, before, after }: { readonly yard: Yard; readonly before: Scene; readonly after: Scene },
  name: string
): Way {
  const [from, to] = [before, after].map((scene) => vehicles(scene)[name]);
  const gone = from && to ? eastMm(yard, to) - eastMm(yard, from) : 0;
  if (Math.abs(gone) < SEEN_MM) return 'stays';
  return gone > 0 ? 'east' : 'west';
}
