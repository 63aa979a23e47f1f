export { overTime, sureAndRight, undated, type Period, type Tally } from './confidence';
export { merged } from './merge';
export {
  countTries,
  noProgress,
  owesTwin,
  readProgress,
  surenesses,
  withTry,
  type Progress,
  type Sureness,
  type Try
} from './progress';
export { A_VISIT, dueFrom, nextSeed, toWake, wakeId, type Waking } from './wake';
