import * as v from 'valibot';
import { replacePart } from '../runs';
import { faultKind } from './kind';
import { partsOf } from './parts';

/** A panel lamp whose LED is in the wrong way round. */
export const lampReversed = faultKind({
  key: 'lampReversed',
  schema: v.strictObject({ lampReversed: v.string('the name of a lamp') }),
  places: (yard) => partsOf(yard, 'lamp').map((lampReversed) => ({ lampReversed })),
  place: (fault) => fault.lampReversed,
  at: (fault) => [fault.lampReversed],
  change: (runs, { lampReversed: id }) =>
    replacePart(runs, id, (part) => [part]).map((run) =>
      run.parts.some((part) => part.id === id) ? { ...run, from: run.to, to: run.from } : run
    ),
  words: (fault) => `the LED of ${fault.lampReversed} is the wrong way round`,
  repair: (fault) => `exchange the two legs of ${fault.lampReversed}`,
  example: { lampReversed: 'lamp A' }
});
