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

/** One kind of thing that is kept: how its keys begin, also of what is set aside, and its noun. */
export interface Place {
  readonly keys: string;
  readonly aside: string;
  readonly noun: string;
}

const denied = ({ noun }: Place) =>
  new StoreError(
    'denied',
    `This browser keeps nothing for this page. Save your ${noun} as a file.`
  );
const full = ({ noun }: Place) =>
  new StoreError(
    'full',
    `This browser’s store is full. Save your ${noun} as a file, or delete another.`
  );

/** Source: Web IDL, DOMException names; the second is an older browser's. */
const isFull = (error: unknown): boolean =>
  ['QuotaExceededError', 'NS_ERROR_DOM_QUOTA_REACHED'].includes(
    (error as Error | null)?.name ?? ''
  );

/** Asks the storage, and turns what it throws into words. */
function ask<T>(device: Device, place: Place, question: (storage: Storage) => T): T {
  try {
    const storage = device.storage();
    if (storage) return question(storage);
  } catch (error) {
    throw isFull(error) ? full(place) : denied(place);
  }
  throw denied(place);
}

/** Ids of all that is kept in a place. @throws StoreError */
export const idsOn = (device: Device, place: Place): readonly string[] =>
  ask(device, place, (storage) =>
    Array.from({ length: storage.length }, (_, index) => storage.key(index) ?? '')
      .filter((key) => key.startsWith(place.keys))
      .map((key) => key.slice(place.keys.length))
  );

/** The text kept under an id; null when there is none. @throws StoreError */
export const textOn = (device: Device, place: Place, id: string): string | null =>
  ask(device, place, (storage) => storage.getItem(place.keys + id));

/** What is to be kept, and under which key. */
interface Put {
  readonly key: string;
  readonly text: string;
}

function put(device: Device, place: Place, { key, text }: Put): void {
  const stands = ask(device, place, (storage) => {
    storage.setItem(key, text);
    return storage.getItem(key) === text;
  });
  if (!stands) throw denied(place);
}

/** Keeps a text under an id. What stood there stays when it fails. @throws StoreError */
export const putOn = (device: Device, place: Place, id: string, text: string): void =>
  put(device, place, { key: place.keys + id, text });

/** Takes an id's text away. @throws StoreError */
export const takeFrom = (device: Device, place: Place, id: string): void =>
  ask(device, place, (storage) => storage.removeItem(place.keys + id));

/** Sets an id's text that cannot be read aside, untouched; first the copy, then the rest. @throws StoreError */
export function setAside(device: Device, place: Place, id: string): void {
  const text = textOn(device, place, id);
  if (text === null) return;
  const aside = place.aside + id;
  const taken = ask(device, place, (storage) => storage.getItem(aside)) ?? text;
  put(device, place, { key: taken === text ? aside : `${aside}.${device.newId()}`, text });
  takeFrom(device, place, id);
}
