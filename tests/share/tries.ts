import fc from 'fast-check';
import { noProgress, surenesses, withTry, type Progress, type Try } from '../../src/lib/share';

/** Any try, with or without a day. */
export const anyTry: fc.Arbitrary<Try> = fc.record(
  {
    right: fc.boolean(),
    sure: fc.constantFrom(...surenesses),
    day: fc.integer({ min: 20000, max: 20400 })
  },
  { requiredKeys: ['right', 'sure'] }
);

/** A record of tries, each at a call. */
export const recordOf = (tries: readonly (readonly [string, Try])[]): Progress =>
  tries.reduce((kept, [id, each]) => withTry(kept, id, each), noProgress);

/** Any record of a few calls. */
export const anyRecord: fc.Arbitrary<Progress> = fc
  .array(fc.tuple(fc.constantFrom('home/1', '01-out/1', '01-out/2', 'wake/chain/3'), anyTry))
  .map(recordOf);
