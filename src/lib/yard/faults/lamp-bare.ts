import * as v from 'valibot';
import { replacePart } from '../runs';
import { faultKind } from './kind';
import { partsOf } from './parts';

const resistorOf = (lamp: string): string => lamp.replace('lamp', 'lamp resistor');

/** A panel lamp without its resistor: wire stands in its place. */
export const lampBare = faultKind({
  key: 'lampBare',
  schema: v.strictObject({ lampBare: v.string('the name of a lamp') }),
  places: (yard) => partsOf(yard, 'lamp').map((lampBare) => ({ lampBare })),
  place: (fault) => fault.lampBare,
  at: (fault) => [resistorOf(fault.lampBare)],
  change: (runs, fault) =>
    replacePart(runs, resistorOf(fault.lampBare), (part) => [{ ...part, kind: 'wire', ohms: 0 }]),
  words: (fault) => `${fault.lampBare} has no resistor`,
  repair: (fault) => `put the resistor of ${fault.lampBare} in, and fit a new LED`,
  example: { lampBare: 'lamp A' }
});
