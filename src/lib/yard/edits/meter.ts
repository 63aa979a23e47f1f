import * as v from 'valibot';
import { insertAfter } from '../runs';
import { editKind } from './kind';

/** Resistance of an ammeter's shunt with its leads, Ω. Source: common practice. */
const SHUNT_OHMS = 0.02;

/** An ammeter in a wire. */
export const meter = editKind({
  key: 'meter',
  schema: v.strictObject({
    meter: v.pipe(v.string(), v.regex(/^[a-z0-9 ]{1,12}$/, 'a short name in small letters')),
    in: v.string('the name of a wire')
  }),
  apply: (runs, edit) =>
    insertAfter(runs, edit.in, {
      id: `meter ${edit.meter}`,
      kind: 'meter',
      ohms: SHUNT_OHMS,
      closed: true
    }),
  words: (edit) => `the meter '${edit.meter}' is in the ${edit.in}`,
  example: { meter: 'out', in: 'feed dropper A' }
});
