import * as v from 'valibot';
import { hold, PairSchema, pairWords } from '../probe';
import { editKind } from './kind';

/** A voltmeter held at two points; it takes next to no current. */
export const volts = editKind({
  key: 'volts',
  schema: v.strictObject({ volts: PairSchema }),
  apply: (runs, edit) => hold(runs, 'voltmeter', edit.volts),
  words: (edit) => `the voltmeter is between ${pairWords(edit.volts)}`,
  example: { volts: ['feed', 'feed rail A'] }
});
