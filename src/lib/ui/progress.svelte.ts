import { keep, readKept } from './store';
import { noProgress, readProgress, withTry, type Progress, type Try } from '../share';

const KEY = 'ohmyard.progress';
const SPOILT = 'ohmyard.progress.unreadable';

let progress = $state<Progress>(noProgress);
let notice = $state('');

/** What was called on this device; empty until `loadProgress`. */
export const progressNow = (): Progress => progress;

/** What went wrong with the store, for the reader; empty when nothing did. */
export const progressNotice = (): string => notice;

/** Reads the store. What cannot be read is set aside under another key, never thrown away. */
export function loadProgress(): void {
  const text = readKept(KEY);
  if (text === null) return;
  try {
    progress = readProgress(text);
  } catch {
    keep(SPOILT, text);
    notice =
      'Your saved progress could not be read, so counting starts anew. The old record is kept on this device, untouched.';
  }
}

/** Keeps one more try. */
export function keepTry(id: string, attempt: Try): void {
  progress = withTry(progress, id, attempt);
  if (!keep(KEY, JSON.stringify(progress))) {
    notice = 'This browser keeps nothing for this page, so your progress ends with the visit.';
  }
}
