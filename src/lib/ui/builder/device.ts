import type { Device } from '../../share';

/** This device's storage, clock and names, for the store of yards. */
export const device = (): Device => ({
  storage: () => localStorage,
  now: () => Date.now(),
  newId: () => crypto.randomUUID(),
  tab
});

/** A name of this tab, good until the page is left. */
const tab = Math.random().toString(36).slice(2);
