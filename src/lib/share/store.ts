import { BorderError } from '../yard';
import { entryText, readEntry, type KeptAs, type Mark, type Written } from './entry';
import { compactText, named, type YardFile } from './file';
import { MAX_NAME } from './limits';
import {
  idsOn,
  putOn,
  setAside,
  StoreError,
  takeFrom,
  textOn,
  type Device,
  type Place
} from './shelf';
import { readText } from './text';
import { ConflictError, tried, type Stored } from './tried';

/** A kind of thing that is kept: where, how it is written, and how it is named. */
export interface Keeping<F> extends Place, Written<F> {
  readonly nameOf: (file: F) => string;
  /** @throws BorderError when the name does not fit. */
  readonly named: (file: F, name: string) => F;
}

/** What is kept of one kind on this device. */
export interface ShelfOf<F> {
  /** Things, the last changed first. */
  readonly all: readonly KeptAs<F>[];
  /** What there is to say, when something could not be read; else empty. */
  readonly words: string;
}

/** Something that was deleted, to be put back as long as the page is open. */
export interface Removed {
  readonly id: string;
  readonly text: string;
}

const COPY = ', copy';

/** A name as that of a copy, no longer than a name may be. */
function copyName(name: string): string {
  const short = [...name].slice(0, MAX_NAME - COPY.length).join('');
  return short.slice(0, MAX_NAME - COPY.length) + COPY;
}

/** The single acts of a store; they throw what `storeOf` turns into words. */
class Acts<F> {
  /** What was last read or put under each id: the same text is not read again. */
  readonly #known = new Map<string, { readonly text: string; readonly kept: KeptAs<F> }>();

  constructor(readonly kind: Keeping<F>) {}

  /** The thing under an id. What cannot be read is set aside, never overwritten. */
  standing(device: Device, id: string): KeptAs<F> {
    const { noun } = this.kind;
    const text = textOn(device, this.kind, id);
    if (text === null) {
      const words = `This ${noun} is no longer on this device. Keep it as a new one.`;
      throw new StoreError('gone', words);
    }
    const known = this.#known.get(id);
    if (known?.text === text) return known.kept;
    const entry = readEntry(this.kind, id, text);
    if (entry === 'newer') {
      const words = `This ${noun} was kept by a newer page. Reload while online, then try again.`;
      throw new StoreError('newer', words);
    }
    if (entry !== 'spoilt') {
      this.#known.set(id, { text, kept: entry });
      return entry;
    }
    setAside(device, this.kind, id);
    const words = `This ${noun}’s record was damaged. It is set aside, untouched, on this device.`;
    throw new StoreError('spoilt', words);
  }

  /** The thing under an id, if it is still the one that the caller knows. */
  unchanged(device: Device, mark: Mark): KeptAs<F> {
    const kept = this.standing(device, mark.id);
    if (kept.revision === mark.revision && kept.by === mark.by) return kept;
    throw new ConflictError(kept, this.kind.noun);
  }

  put(device: Device, { id, revision }: Pick<Mark, 'id' | 'revision'>, file: F): KeptAs<F> {
    const kept: KeptAs<F> = { id, revision, by: device.tab, changed: device.now(), file };
    const text = entryText(this.kind, kept);
    putOn(device, this.kind, id, text);
    this.#known.set(id, { text, kept });
    return kept;
  }

  keptAgain(device: Device, mark: Mark, file: F): KeptAs<F> {
    const kept = this.unchanged(device, mark);
    return JSON.stringify(kept.file) === JSON.stringify(file)
      ? kept
      : this.put(device, { id: mark.id, revision: kept.revision + 1 }, file);
  }

  renamed(file: F, name: string): F {
    try {
      return this.kind.named(file, name);
    } catch (error) {
      if (!(error instanceof BorderError)) throw error;
      throw new StoreError('does not fit', `A name has at most ${MAX_NAME} characters.`);
    }
  }
}

/** How things of one kind are kept on the device. Nothing of it throws. */
export function storeOf<F>(kind: Keeping<F>) {
  type K = KeptAs<F>;
  const acts = new Acts(kind);
  const fresh = (device: Device, file: F) =>
    acts.put(device, { id: device.newId(), revision: 1 }, file);
  const readKept = (device: Device, id: string): Stored<K, K> =>
    tried(() => acts.standing(device, id));
  return {
    /** Keeps a thing as a new one. */
    keepNew: (device: Device, file: F): Stored<K, K> => tried(() => fresh(device, file)),

    /**
     * Keeps a thing over what the caller had read or kept last. When another tab has kept it since, it
     * is refused and nothing changes: the caller may keep both by `keepNew`, or take theirs.
     */
    keepAgain: (device: Device, mark: Mark, file: F): Stored<K, K> =>
      tried(() => acts.keptAgain(device, mark, file)),

    /** The thing under an id. */
    readKept,

    /** Every one on the device. What cannot be read is set aside under another key, untouched. */
    listKept: (device: Device): Stored<ShelfOf<F>, K> =>
      tried(() => {
        const read = idsOn(device, kind).map((id) => readKept(device, id));
        const all = read.flatMap((each) => ('ok' in each ? [each.ok] : []));
        const words = read.flatMap((each) =>
          'ok' in each || each.why === 'gone' ? [] : [each.wrong]
        );
        return {
          all: all.sort((a, b) => b.changed - a.changed || (a.id < b.id ? -1 : 1)),
          words: [...new Set(words)].join(' ')
        };
      }),

    /** Gives it another name. */
    renameKept: (device: Device, mark: Mark, name: string): Stored<K, K> =>
      tried(() =>
        acts.keptAgain(device, mark, acts.renamed(acts.unchanged(device, mark).file, name))
      ),

    /** Keeps a second one like the first, named as its copy. */
    duplicateKept: (device: Device, id: string): Stored<K, K> =>
      tried(() => {
        const { file } = acts.standing(device, id);
        return fresh(device, acts.renamed(file, copyName(kind.nameOf(file))));
      }),

    /** Deletes it, if it is still the one that the caller knows, and hands it out for `restoreKept`. */
    removeKept: (device: Device, mark: Mark): Stored<Removed, K> =>
      tried(() => {
        const kept = acts.unchanged(device, mark);
        takeFrom(device, kind, mark.id);
        return { id: mark.id, text: entryText(kind, kept) };
      }),

    /** Puts a deleted one back; under a new id where its own has been taken since. */
    restoreKept: (device: Device, { id, text }: Removed): Stored<K, K> =>
      tried(() => {
        const place = textOn(device, kind, id) === null ? id : device.newId();
        putOn(device, kind, place, text);
        return acts.standing(device, place);
      })
  };
}

/** The yards of this device. */
export const yardStore = storeOf<YardFile>({
  keys: 'ohmyard.yard.',
  aside: 'ohmyard.aside.',
  noun: 'yard',
  text: compactText,
  read: readText,
  nameOf: ({ name }) => name,
  named
});
