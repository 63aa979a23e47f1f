import * as v from 'valibot';
import { FaultSchema, read, type Fault, type Lit } from '../../yard';
import type { Played } from './kind';

/** Two points at which a test lamp is held. */
export const PairSchema = v.pipe(
  v.array(v.string(), 'the names of two points'),
  v.length(2, 'the names of two points'),
  v.transform(([a, b]): [string, string] => [a as string, b as string])
);

/** Two to four faults, each with a name. */
export const FaultsSchema = v.pipe(
  v.record(v.string(), FaultSchema, 'two to four faults, each with a name'),
  v.check(
    (of) => Object.keys(of).length > 1 && Object.keys(of).length < 5,
    'two to four faults, each with a name'
  )
);

/** How a test lamp at two points would look, were these the faults of the scene. */
export const lampOn = (
  { yard, after }: Played,
  faults: readonly Fault[],
  pair: [string, string]
): Lit => {
  const edits = [...after.edits.filter((edit) => !('testLamp' in edit)), { testLamp: pair }];
  return read(yard, { ...after, faults: [...faults], edits }).testLamp ?? 'dark';
};
