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
export { A_VISIT, dueFrom, nextSeed, toWake, wakeId, wentWrong, type Waking } from './wake';
export { csv } from './csv';
export { type Kept, type KeptAs } from './entry';
export { fileText, leastScene, leastYard, yardFile, type YardFile } from './file';
export { formats, type Form } from './form';
export { changed, historyOf, MAX_STEPS, redone, settled, undone, type History } from './history';
export { fragmentOf, linkFragment, readLink } from './link';
export { fileName, shownName, shownText } from './names';
export { open, opener, openFile, type Opened } from './open';
export { readPng, writePng } from './png';
export { type Device, type Storage } from './shelf';
export { storeOf, yardStore, type Removed } from './store';
export { type Stored } from './tried';
export {
  huntAside,
  huntBack,
  withFault,
  withHunt,
  withoutFault,
  type FaultLine,
  type HuntNotes,
  type HuntReading
} from './huntNotes';
export {
  begunAnew,
  changeNotes,
  MAX_INITIALS,
  MAX_READING,
  putBack,
  readNotes,
  withPrinted,
  withReading,
  withTick,
  type BenchNotes,
  type Notes,
  type Printed
} from './notes';
export { MAX_SEED, practiceIn, withPractice, type PracticeNotes } from './practiceNotes';
export { readSvg, writeSvg } from './svg';
export { readAs, readText } from './text';
export { UnreadableError } from './wrong';
