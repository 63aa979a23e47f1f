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
export { type Kept, type KeptAs, type Mark } from './entry';
export {
  fileText,
  FORMAT,
  leastScene,
  leastYard,
  yardFile,
  type Parcel,
  type YardFile
} from './file';
export { formats, type Form } from './form';
export { changed, historyOf, MAX_STEPS, redone, settled, undone, type History } from './history';
export { MAX_FILE_BYTES, MAX_NAME } from './limits';
export { fragmentOf, linkFragment, readLink } from './link';
export { fileName, shownName, shownText } from './names';
export { open, opener, openFile, type Opened, type OpenedAs, type SomeFile } from './open';
export { readPng, writePng } from './png';
export { type Device, type Storage, type WhyNot } from './shelf';
export {
  duplicateKept,
  keepAgain,
  keepNew,
  listKept,
  readKept,
  removeKept,
  renameKept,
  restoreKept,
  storeOf,
  yardStore,
  type Removed,
  type Shelf,
  type ShelfOf
} from './store';
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
export { UnreadableError, type WhyWrong } from './wrong';
