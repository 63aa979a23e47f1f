export {
  noProgress,
  owesTwin,
  readProgress,
  surenesses,
  withTry,
  type Progress,
  type Sureness,
  type Try
} from './progress';
