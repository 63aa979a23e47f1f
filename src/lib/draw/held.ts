import type { Instrument, Run } from '../yard';
import { at, cut, lengthOf, longest, type Polyline } from './geometry';
import type { Anchor, LaidRun } from './run';

/** A meter, or the test lamp, held at two points of a circuit diagram. */
export interface Held extends Anchor {
  readonly id: string;
  readonly kind: Instrument;
}

/** Half the room which a held instrument takes on its wire, px. */
const HALF = 15;

/** An instrument in the middle of the wire between its two points. */
export function layHeld(
  run: Run,
  line: Polyline
): { readonly symbol: Held; readonly laid: LaidRun & { readonly run: Run } } {
  const { from, to } = longest(line);
  const middle = (from + to) / 2;
  const { id, kind } = run.parts[0] as Run['parts'][number];
  const piece = (begin: number, end: number, node: string) => ({
    line: cut(line, begin, end),
    node,
    part: id
  });
  const symbol: Held = { ...at(line, middle), id, kind: kind as Instrument };
  return {
    symbol,
    laid: {
      run,
      glyphs: [],
      anchors: new Map([[id, symbol]]),
      stretches: [piece(0, middle - HALF, run.from), piece(middle + HALF, lengthOf(line), run.to)]
    }
  };
}
