import * as v from 'valibot';
import { hold, PairSchema, pairWords } from '../probe';
import { editKind } from './kind';

/** An ohmmeter with its buzzer held at two points; only with the supply off. */
export const ohms = editKind({
  key: 'ohms',
  schema: v.strictObject({ ohms: PairSchema }),
  apply: (runs, edit) => hold(runs, 'ohmmeter', edit.ohms),
  words: (edit) => `the ohmmeter is between ${pairWords(edit.ohms)}`,
  example: { ohms: ['feed tag A', 'feed rail A'] }
});
