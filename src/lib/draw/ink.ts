import type { Level } from '../yard';
import { at, lengthOf, type Point, type Polyline } from './geometry';

/** How a conductor is filled. */
export interface Ink {
  /** `own`: on the lamps' own island. `plain`: not told yet. `split`: part way, both inks. */
  readonly fill: 'feed' | 'return' | 'split' | 'none' | 'own' | 'short' | 'plain';
  /** At its level only through a load. */
  readonly broken: boolean;
  /** The feed's share of the width when split. */
  readonly share: number;
}

/** Nearer to a terminal than this share of the volts, a conductor has that terminal's ink alone. */
const PURE = 0.05;

/** A conductor whose result is not told yet. */
export const untold: Ink = { fill: 'plain', broken: false, share: 0 };

/** A conductor of the lamps' own supply. */
export const own: Ink = { fill: 'own', broken: false, share: 0 };

/** The ink of a level. */
export function inkOf({ joined, share = joined.startsWith('feed') ? 1 : 0 }: Level): Ink {
  if (joined === 'lamp supply') return own;
  if (joined === 'nothing') return { fill: 'none', broken: false, share: 0 };
  if (joined === 'both') return { fill: 'short', broken: false, share: 0 };
  const broken = joined === 'through';
  if (share > 1 - PURE) return { fill: 'feed', broken, share: 1 };
  if (share < PURE) return { fill: 'return', broken, share: 0 };
  return { fill: 'split', broken, share };
}

/** Whether the level wants its volts beside it. */
export const isPartWay = (level: Level): boolean => inkOf(level).fill === 'split';

/** Least current that is shown to flow, A. */
const SHOWN = 0.002;

/** Space between chevrons, px: closer is more. Undefined when nothing flows. */
export function spacing(amps: number): number | undefined {
  const size = Math.abs(amps);
  if (size < SHOWN) return undefined;
  if (size < 0.1) return 26;
  return size <= 0.5 ? 18 : 12;
}

/** A chevron: where, and which way it points. */
export type Chevron = Point & { readonly angle: number };

/** Chevrons along a line, pointing the way the current goes, moved on by `drift` px. */
export function chevrons(line: Polyline, amps: number, drift: number): readonly Chevron[] {
  const gap = spacing(amps);
  if (gap === undefined) return [];
  const length = lengthOf(line);
  const back = amps < 0;
  const first = (((drift * (back ? -1 : 1) + gap / 2) % gap) + gap) % gap;
  const marks: Chevron[] = [];
  for (let along = first; along < length; along += gap) {
    if (along < 5 || along > length - 5) continue;
    const mark = at(line, along);
    marks.push({ ...mark, angle: mark.angle + (back ? 180 : 0) });
  }
  return marks;
}
