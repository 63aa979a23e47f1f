import * as v from 'valibot';
import { hold, PairSchema, pairWords } from '../probe';
import { editKind } from './kind';

/** A 12 V test lamp held at two points; it loads the circuit as a lamp does. */
export const testLamp = editKind({
  key: 'testLamp',
  schema: v.strictObject({ testLamp: PairSchema }),
  apply: (runs, edit) => hold(runs, 'test lamp', edit.testLamp),
  words: (edit) => `the test lamp is between ${pairWords(edit.testLamp)}`,
  example: { testLamp: ['feed', 'return rail A'] }
});
