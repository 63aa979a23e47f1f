import type { Instrument, Run } from '../yard';
import { at, cut, lengthOf, longest, type Polyline } from './geometry';
import type { Anchor } from './run';

/** A meter, or the test lamp, held at two points of a circuit diagram; its leads have no ink, so that they tell nothing. */
export interface Held extends Anchor {
  readonly id: string;
  readonly kind: Instrument;
  readonly leads: readonly Polyline[];
}

/** Half the room which a held instrument takes on its wire, px. */
const HALF = 15;

/** An instrument in the middle of the wire between its two points. */
export function layHeld(run: Run, line: Polyline): Held {
  const { from, to } = longest(line);
  const middle = (from + to) / 2;
  const { id, kind } = run.parts[0] as Run['parts'][number];
  const leads = [cut(line, 0, middle - HALF), cut(line, middle + HALF, lengthOf(line))];
  return { ...at(line, middle), id, kind: kind as Instrument, leads };
}
