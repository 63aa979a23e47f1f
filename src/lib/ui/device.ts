import type { Device } from '../share';

/** A name that chance makes unlike any other. */
const chanceName = (): string =>
  Array.from(crypto.getRandomValues(new Uint32Array(2)), (part) => part.toString(36)).join('');

/** This page's own storage, clock and tab, for keeping yards; made once a visit. */
export const pageDevice = (): Device => ({
  storage: () => localStorage,
  now: () => Date.now(),
  newId: chanceName,
  tab: chanceName()
});
