import * as v from 'valibot';
import { quantity } from '../border';
import { insertAfter } from '../runs';
import { editKind } from './kind';

/** A resistor put in a wire, in ohms. */
export const resistor = editKind({
  key: 'resistor',
  schema: v.strictObject({
    resistor: quantity(0.1, 1e6, 'Ω'),
    in: v.string('the name of a wire')
  }),
  apply: (runs, edit) =>
    insertAfter(runs, edit.in, {
      id: `resistor in ${edit.in}`,
      kind: 'resistor',
      ohms: edit.resistor,
      closed: true
    }),
  words: (edit) => `a ${edit.resistor} Ω resistor is in the ${edit.in}`,
  example: { resistor: 10, in: 'feed dropper A' }
});
