import { placed } from '../yard';
import { stopsOf } from './trace';
import type { View } from './session.svelte';
import { unique } from './unique';

/** Everything of a road's own row; the shared part of its loop only once its result may be told. */
function roadPlaces(view: View, untold: readonly string[], road: string): readonly string[] {
  const row = view.reading.runs
    .filter((run) => run.road === road && run.job !== 'lamp' && !run.held)
    .flatMap((run) => run.parts.map(({ id }) => id));
  const shared = untold.length > 0 ? [] : stopsOf(view, road).map(({ place }) => place);
  return [`road ${road}`, ...row, ...shared];
}

/** Parts of one kind: all contacts of the plug, or of the pin. */
const allOf = ({ reading }: View, kind: string): readonly string[] =>
  reading.runs.flatMap((run) =>
    placed(run).flatMap((part) => (part.kind === kind ? [part.id] : []))
  );

/** The places that a name means on a board: `road A` is its whole loop, `plug` and `pin` their contacts as well. */
export const placesOf = (
  view: View,
  untold: readonly string[],
  names: readonly string[]
): readonly string[] =>
  unique(
    names.flatMap((name) => {
      const [, road] = /^road (.+)$/.exec(name) ?? [];
      if (road !== undefined) return roadPlaces(view, untold, road);
      if (name === 'plug') return allOf(view, 'plug');
      return name === 'pin' ? [name, ...allOf(view, 'pin contact')] : [name];
    })
  );
