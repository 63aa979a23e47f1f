import type { Scene } from '../yard';

/** What one can see a loco do. */
export type Way = 'stays' | 'west' | 'east';

/** Less than this is not seen to move, mm. Source: common practice. */
const SEEN_MM = 3;

/** What a loco did between two scenes. */
export function way(before: Scene, after: Scene, loco: string): Way {
  const gone = (after.locos[loco]?.atMm ?? 0) - (before.locos[loco]?.atMm ?? 0);
  if (Math.abs(gone) < SEEN_MM) return 'stays';
  return gone > 0 ? 'east' : 'west';
}
