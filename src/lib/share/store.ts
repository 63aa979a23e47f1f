import { BorderError } from '../yard';
import { entryText, readEntry, type Kept, type Mark } from './entry';
import { named, type YardFile } from './file';
import { MAX_NAME } from './limits';
import { idsOn, putOn, setAside, StoreError, takeFrom, textOn, type Device } from './shelf';
import { ConflictError, tried, type Stored } from './tried';

/** What is kept on this device. */
export interface Shelf {
  /** Yards, the last changed first. */
  readonly yards: readonly Kept[];
  /** What there is to say, when something could not be read; else empty. */
  readonly words: string;
}

/** A yard that was deleted, to be put back as long as the page is open. */
export interface Removed {
  readonly id: string;
  readonly text: string;
}

const gone = () =>
  new StoreError('gone', 'This yard is no longer on this device. Keep it as a new one.');
const newer = () =>
  new StoreError(
    'newer',
    'This yard was kept by a newer page. Reload while online, then try again.'
  );

/** The yard under an id. What cannot be read is set aside, never overwritten. */
function standing(device: Device, id: string): Kept {
  const text = textOn(device, id);
  if (text === null) throw gone();
  const entry = readEntry(id, text);
  if (entry === 'newer') throw newer();
  if (entry !== 'spoilt') return entry;
  setAside(device, id);
  throw new StoreError(
    'spoilt',
    'This yard’s record was damaged. It is set aside, untouched, on this device.'
  );
}

/** The yard under an id, if it is still the one that the caller knows. */
function unchanged(device: Device, mark: Mark): Kept {
  const kept = standing(device, mark.id);
  if (kept.revision !== mark.revision || kept.by !== mark.by) throw new ConflictError(kept);
  return kept;
}

function put(device: Device, id: string, revision: number, file: YardFile): Kept {
  const kept: Kept = { id, revision, by: device.tab, changed: device.now(), file };
  putOn(device, id, entryText(kept));
  return kept;
}

/** Keeps a yard as a new one. */
export const keepNew = (device: Device, file: YardFile): Stored<Kept> =>
  tried(() => put(device, device.newId(), 1, file));

function keptAgain(device: Device, mark: Mark, file: YardFile): Kept {
  const kept = unchanged(device, mark);
  return JSON.stringify(kept.file) === JSON.stringify(file)
    ? kept
    : put(device, mark.id, kept.revision + 1, file);
}

/**
 * Keeps a yard over what the caller had read or kept last. When another tab has kept it since, it
 * is refused and nothing changes: the caller may keep both by `keepNew`, or take theirs.
 */
export const keepAgain = (device: Device, mark: Mark, file: YardFile): Stored<Kept> =>
  tried(() => keptAgain(device, mark, file));

/** The yard under an id. */
export const readKept = (device: Device, id: string): Stored<Kept> =>
  tried(() => standing(device, id));

/** Every yard on the device. What cannot be read is set aside under another key, untouched. */
export function listKept(device: Device): Stored<Shelf> {
  return tried(() => {
    const read = idsOn(device).map((id) => readKept(device, id));
    const yards = read.flatMap((each) => ('ok' in each ? [each.ok] : []));
    const words = read.flatMap((each) => ('ok' in each || each.why === 'gone' ? [] : [each.wrong]));
    return {
      yards: yards.sort((a, b) => b.changed - a.changed || (a.id < b.id ? -1 : 1)),
      words: [...new Set(words)].join(' ')
    };
  });
}

function renamed(file: YardFile, name: string): YardFile {
  try {
    return named(file, name);
  } catch (error) {
    if (!(error instanceof BorderError)) throw error;
    throw new StoreError('does not fit', `A name has at most ${MAX_NAME} characters.`);
  }
}

/** Gives a yard another name. */
export const renameKept = (device: Device, mark: Mark, name: string): Stored<Kept> =>
  tried(() => keptAgain(device, mark, renamed(unchanged(device, mark).file, name)));

const COPY = ', copy';

/** Keeps a second yard like the first, named as its copy. */
export const duplicateKept = (device: Device, id: string): Stored<Kept> =>
  tried(() => {
    const { file } = standing(device, id);
    const name = [...file.name].slice(0, MAX_NAME - COPY.length);
    const short = name.join('').slice(0, MAX_NAME - COPY.length);
    return put(device, device.newId(), 1, renamed(file, short + COPY));
  });

/** Deletes a yard, if it is still the one that the caller knows, and hands it out for `restoreKept`. */
export const removeKept = (device: Device, mark: Mark): Stored<Removed> =>
  tried(() => {
    const kept = unchanged(device, mark);
    takeFrom(device, mark.id);
    return { id: mark.id, text: entryText(kept) };
  });

/** Puts a deleted yard back; under a new id where its own has been taken since. */
export const restoreKept = (device: Device, { id, text }: Removed): Stored<Kept> =>
  tried(() => {
    const place = textOn(device, id) === null ? id : device.newId();
    putOn(device, place, text);
    return standing(device, place);
  });
