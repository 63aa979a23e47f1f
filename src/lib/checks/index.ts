export { checks } from './checks';
export {
  defaultOptions,
  type Check,
  type CheckOptions,
  type Figures,
  type Finding,
  type Grade,
  type Sight
} from './finding';
export { faultBoard, type FaultRow, type FaultTable } from './fault-row';
export { faultTable } from './one-thing-fails';
export { pairTable, tooManyPairs } from './two-things-fail';
export { runChecks, type Told } from './run';
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
export { result } from './result';
