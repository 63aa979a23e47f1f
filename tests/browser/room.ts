import { startWorkshop, type Workshop } from '../workshop/server';
import { build } from './server';
import { expect, test } from './test';

/** A test on the built site as a workshop's server serves it, with a room for votes beside it. */
export const roomTest = test.extend<{ room: Workshop }>({
  room: async ({ browserName }, use) => {
    expect(browserName).toBe('chromium');
    const room = await startWorkshop(build);
    await use(room);
    await room.stop();
  },
  baseURL: async ({ room }, use) => use(room.url)
});
