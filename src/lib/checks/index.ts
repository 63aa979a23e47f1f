export { checks } from './checks';
export {
  defaultOptions,
  type CheckOptions,
  type Figures,
  type Finding,
  type Grade,
  type Sight
} from './finding';
export { faultBoard, type FaultRow, type FaultTable } from './fault-row';
export { faultTable } from './one-thing-fails';
export { tooManyPairs } from './two-things-fail';
export { runChecks, type Told } from './run';
export { groundOf, proveGap, statesOf, type GapProof } from './gap/proof';
export { breachScene } from './gap/board';
export { proveFaults, type Progress } from './gap/faults';
export { fitLamp } from './lamps';
export { roadScene } from './road-scene';
export { roadVolts } from './running';
export { ratedParts } from './ratings';
export { tally, type Tally } from './tally';
export { result } from './result';
