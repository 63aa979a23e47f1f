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

/** Moves a text that cannot be read under a key of its own, untouched; first the copy, then the rest. @throws StoreError */
export function setAside(device: Device, id: string): void {
  const text = textOn(device, id);
  if (text === null) return;
  const taken = ask(device, (storage) => storage.getItem(ASIDE + id)) ?? text;
  put(device, taken === text ? ASIDE + id : `${ASIDE}${id}.${device.newId()}`, text);
  takeFrom(device, id);
}
