import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join as path } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { badRequests, broken, refusals } from './flood';
import { join, screenOf, type Seen, type Tally } from './phone';
import { startWorkshop, type Workshop } from './server';

const site = mkdtempSync(path(tmpdir(), 'site-'));
writeFileSync(path(site, 'index.html'), 'a site');

const BAD_REQUESTS = 100_000;
const CONNECTIONS = 8;
const BATCHES = 10;

let room: Workshop;
beforeAll(async () => void (room = await startWorkshop(site)));
afterAll(() => room.stop());

test('100 000 bad requests are refused one by one, and a phone votes in their midst', async () => {
  const screen = await screenOf(room);
  await screen.set(true);
  const phone = await join(room);
  await phone.until<Seen | null>('round', (seen) => seen?.open === true);

  const each = BAD_REQUESTS / CONNECTIONS / BATCHES;
  const batch = Array.from({ length: each }, (_, n) => badRequests[n % badRequests.length]).join(
    ''
  );
  const flood = async () => {
    let count = 0;
    for (let sent = 0; sent < BATCHES; sent++) count += await refusals(room, batch, each);
    return count;
  };
  const floods = Promise.all(Array.from({ length: CONNECTIONS }, flood));
  expect((await phone.vote('B')).status).toBe(200);
  await screen.until<Tally>('tally', ({ tallies }) => tallies.B === 1);
  const counts = await floods;
  expect(counts.reduce((all, count) => all + count, 0)).toBe(BAD_REQUESTS);

  const hangUps = await Promise.all(
    Array.from({ length: 120 }, (_, n) => refusals(room, broken[n % broken.length] as string))
  );
  expect(hangUps.filter((count) => count !== 1)).toEqual([]);
  expect((await phone.vote('C')).status, 'the room still works').toBe(200);
  const tally = await screen.until<Tally>('tally', ({ tallies }) => tallies.C === 1);
  expect(tally.tallies, 'and nobody else has voted').toEqual({ A: 0, B: 0, C: 1 });
  for (const { drop } of [screen, phone]) drop();
});
