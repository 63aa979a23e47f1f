import type { Yard } from '../../yard';
import type { Moment } from '../moment';
import { across } from './across';
import type { Test } from './kind';
import { ohms } from './ohms';
import { panelLamp } from './panelLamp';
import { run } from './run';
import { stray } from './stray';
import { testLamp } from './testLamp';
import { volts } from './volts';

export type { Figure, Outcome, Test } from './kind';

/** Every kind of test; a new one is one file and one name here. */
const testKinds = [run, panelLamp, stray, across, testLamp, volts, ohms] as const;

/** Every test that a moment allows. */
export const testsIn = (yard: Yard, moment: Moment): readonly Test[] =>
  testKinds.flatMap((kind) => kind.make(yard, moment));
