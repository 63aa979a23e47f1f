import type { Check } from './finding';
import { gapProof } from './gap-proof';
import { lamps } from './lamps';
import { offIsOff } from './off-is-off';
import { oneThingFails } from './one-thing-fails';
import { protection } from './protection';
import { ratings } from './ratings';
import { room } from './room';
import { running } from './running';

/** Every check; a new one is one file and one name here. */
export const checks: readonly Check[] = [
  gapProof,
  oneThingFails,
  offIsOff,
  running,
  ratings,
  protection,
  lamps,
  room
];

export { defaultOptions, type Check, type CheckOptions, type Finding, type Grade } from './finding';
export { groundOf, proveGap, statesOf, type Breach, type GapProof, type States } from './gap/proof';
export { breachScene } from './gap/board';
export {
  faultSteps,
  proveFaults,
  type FaultProof,
  type FaultProofs,
  type Progress
} from './gap/faults';
export { assumptions } from './gap/words';
export { fitLamp, type LampFit, type LampWish } from './lamps';
export { roadScene } from './road-scene';
export { roadVolts, type RoadVolts } from './running';
export { ratedParts, type Rated } from './ratings';
export { tally, type Tally } from './tally';
