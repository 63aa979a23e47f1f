/** What is needed of a device's storage; the page's own has this form. */
export interface Storage {
  readonly length: number;
  key(index: number): string | null;
  getItem(key: string): string | null;
  setItem(key: string, text: string): void;
  removeItem(key: string): void;
}

/** What the store is given of the device. */
export interface Device {
  /** The storage; it throws, or is null, where the browser denies it. */
  readonly storage: () => Storage | null;
  /** ms since 1970. */
  readonly now: () => number;
  /** A name that no yard has had. */
  readonly newId: () => string;
  /** The name of this tab, unlike that of any other. */
  readonly tab: string;
}

/** Why the store could not do something. */
export type WhyNot = 'denied' | 'full' | 'conflict' | 'gone' | 'newer' | 'spoilt' | 'does not fit';

/** Something the store could not do; the message is for the reader. */
export class StoreError extends Error {
  constructor(
    readonly why: WhyNot,
    words: string
  ) {
    super(words);
    this.name = 'StoreError';
  }
}

const YARD = 'ohmyard.yard.';
const ASIDE = 'ohmyard.aside.';
/** What is noted beside a yard: its readings, ticks and last print-out. */
const NOTES = 'ohmyard.notes.';

const denied = () =>
  new StoreError('denied', 'This browser keeps nothing for this page. Save your yard as a file.');
const full = () =>
  new StoreError(
    'full',
    'This browser’s store is full. Save your yard as a file, or delete another.'
  );

/** Source: Web IDL, DOMException names; the second is an older browser's. */
const isFull = (error: unknown): boolean =>
  ['QuotaExceededError', 'NS_ERROR_DOM_QUOTA_REACHED'].includes(
    (error as Error | null)?.name ?? ''
  );

/** Asks the storage, and turns what it throws into words. */
function ask<T>(device: Device, question: (storage: Storage) => T): T {
  try {
    const storage = device.storage();
    if (storage) return question(storage);
  } catch (error) {
    throw isFull(error) ? full() : denied();
  }
  throw denied();
}

/** Ids of all yards that are kept. @throws StoreError */
export const idsOn = (device: Device): readonly string[] =>
  ask(device, (storage) =>
    Array.from({ length: storage.length }, (_, index) => storage.key(index) ?? '')
      .filter((key) => key.startsWith(YARD))
      .map((key) => key.slice(YARD.length))
  );

/** The text kept under an id; null when there is none. @throws StoreError */
export const textOn = (device: Device, id: string): string | null =>
  ask(device, (storage) => storage.getItem(YARD + id));

function put(device: Device, key: string, text: string): void {
  const stands = ask(device, (storage) => {
    storage.setItem(key, text);
    return storage.getItem(key) === text;
  });
  if (!stands) throw denied();
}

/** Keeps a text under an id. What stood there stays when it fails. @throws StoreError */
export const putOn = (device: Device, id: string, text: string): void =>
  put(device, YARD + id, text);

/** Takes an id's text away. @throws StoreError */
export const takeFrom = (device: Device, id: string): void =>
  ask(device, (storage) => storage.removeItem(YARD + id));

/** Moves the text of a key under another, untouched; first the copy, then the rest. */
function moveAside(device: Device, key: string, aside: string): void {
  const text = ask(device, (storage) => storage.getItem(key));
  if (text === null) return;
  const taken = ask(device, (storage) => storage.getItem(aside)) ?? text;
  put(device, taken === text ? aside : `${aside}.${device.newId()}`, text);
  ask(device, (storage) => storage.removeItem(key));
}

/** Sets a yard's text that cannot be read aside. @throws StoreError */
export const setAside = (device: Device, id: string): void =>
  moveAside(device, YARD + id, ASIDE + id);

/** The text of the notes beside a yard; null when there is none. @throws StoreError */
export const readNotesText = (device: Device, id: string): string | null =>
  ask(device, (storage) => storage.getItem(NOTES + id));

/** Keeps the notes beside a yard. What stood there stays when it fails. @throws StoreError */
export const writeNotes = (device: Device, id: string, text: string): void =>
  put(device, NOTES + id, text);

/** Sets notes that cannot be read aside. @throws StoreError */
export const setNotesAside = (device: Device, id: string): void =>
  moveAside(device, NOTES + id, `${ASIDE}notes.${id}`);
