import { noProgress, readProgress, withTry, type Progress, type Try } from '../share';
import { today } from './day';
import { forget, keep, readKept } from './store';

const KEY = 'ohmyard.progress';
const SPOILT = 'ohmyard.progress.unreadable';

let progress = $state.raw<Progress>(noProgress);
let notice = $state('');

/** What was called on this device; empty until `loadProgress`. */
export const progressNow = (): Progress => progress;

/** What went wrong with the store, for the reader; empty when nothing did. */
export const progressNotice = (): string => notice;

/** Keeps a record that cannot be read under a key of its own, so that none is written over. */
function setAside(text: string): void {
  let key = SPOILT;
  for (let count = 2; ![null, text].includes(readKept(key)); count++) key = `${SPOILT}.${count}`;
  keep(key, text);
  notice =
    'Your saved progress could not be read, so counting starts anew. The old record is kept on this device, untouched.';
}

/** The record in the store. What cannot be read is set aside, never thrown away. */
function stored(): Progress | undefined {
  const text = readKept(KEY);
  if (text === null) return undefined;
  try {
    return readProgress(text);
  } catch {
    setAside(text);
    return undefined;
  }
}

/** Reads the store. */
export function loadProgress(): void {
  progress = stored() ?? progress;
}

/** Reads the store now and whenever another tab has changed it. Returns a way to stop. */
export function followProgress(): () => void {
  loadProgress();
  const changed = ({ key, newValue }: StorageEvent) => {
    if (key !== KEY && key !== null) return;
    if (newValue === null) progress = noProgress;
    else loadProgress();
  };
  addEventListener('storage', changed);
  return () => removeEventListener('storage', changed);
}

/** Puts a record in the place of the one here. */
export function setProgress(next: Progress): void {
  progress = next;
  if (!keep(KEY, JSON.stringify(next))) {
    notice = 'This browser keeps nothing for this page, so your progress ends with the visit.';
  }
}

/** Keeps one more try of today, on top of what other tabs have kept. */
export function keepTry(id: string, attempt: Omit<Try, 'day'>): void {
  loadProgress();
  setProgress(withTry(progress, id, { ...attempt, day: today() }));
}

/** Erases the record here. */
export function eraseProgress(): void {
  progress = noProgress;
  forget(KEY);
}
