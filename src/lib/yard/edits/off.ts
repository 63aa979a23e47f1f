import * as v from 'valibot';
import { replacePart } from '../runs';
import { editKind } from './kind';

/** A wire has come off at one end. */
export const off = editKind({
  key: 'off',
  schema: v.strictObject({ off: v.string('the name of a wire') }),
  apply: (runs, edit) => replacePart(runs, edit.off, (part) => [{ ...part, closed: false }]),
  words: (edit) => `the ${edit.off} is off`,
  example: { off: 'return dropper A' }
});
