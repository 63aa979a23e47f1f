import * as v from 'valibot';
import { findPart, insertAfter, replacePart } from '../runs';
import { editKind } from './kind';

/** A road's toggle taken out of its feed and put in another wire. */
export const toggle = editKind({
  key: 'toggle',
  schema: v.strictObject({
    toggle: v.string('the letter of a road with a toggle'),
    in: v.string('the name of a wire')
  }),
  apply(runs, edit) {
    const id = `toggle ${edit.toggle}`;
    const part = findPart(runs, id);
    const without = replacePart(runs, id, () => []);
    return insertAfter(without, edit.in, {
      id,
      kind: part.kind,
      ohms: part.ohms,
      closed: part.closed
    });
  },
  words: (edit) => `toggle ${edit.toggle} is in the ${edit.in}`,
  example: { toggle: 'A', in: 'return dropper A' }
});
