import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join as path } from 'node:path';
import { bench } from 'vitest';
import { join, screenOf, type Seen, type Tally } from '../workshop/phone';
import { startWorkshop, type Workshop } from '../workshop/server';

const VOTERS = 200;
const ROUNDS = 5;

type Phone = Awaited<ReturnType<typeof join>>;

const share = (all: readonly number[], part: number): string =>
  (all.toSorted((a, b) => a - b)[Math.floor(part * (all.length - 1))] ?? NaN).toFixed(0);

/** When the projector's page was first told of so many votes, by their count. */
async function watchScreen(room: Workshop) {
  const screen = await screenOf(room);
  let times: number[] = [];
  screen.each<Tally>('tally', ({ tallies }) => {
    const count = Object.values(tallies).reduce((sum, votes) => sum + votes, 0);
    for (let told = times.length; told < count; told++) times.push(performance.now());
  });
  return { ...screen, times: () => times, forget: () => (times = []) };
}

/** Times from each vote to the screen, ms: all votes within so long, each at its own moment. */
async function round(
  screen: Awaited<ReturnType<typeof watchScreen>>,
  phones: readonly Phone[],
  { number, withinMs }: { readonly number: number; readonly withinMs: number }
): Promise<readonly number[]> {
  await screen.set(true, `round ${number}`);
  const open = phones.map(({ until }) =>
    until<Seen | null>('round', (seen) => seen?.round === number)
  );
  await Promise.all(open);
  screen.forget();
  const sent: number[] = [];
  const votes = phones.map(async ({ vote }, index) => {
    await new Promise((resolve) => setTimeout(resolve, (index / VOTERS) * withinMs));
    const at = performance.now();
    await vote('A');
    // The server counts in the order in which it answers.
    sent.push(at);
  });
  await Promise.all(votes);
  await screen.until<Tally>('tally', ({ tallies }) => tallies.A === VOTERS);
  return sent.map((at, index) => (screen.times()[index] ?? NaN) - at);
}

async function measure() {
  const site = mkdtempSync(path(tmpdir(), 'site-'));
  writeFileSync(path(site, 'index.html'), 'a site');
  const room = await startWorkshop(site);
  const screen = await watchScreen(room);
  const phones: Phone[] = [];
  for (let count = 0; count < VOTERS; count++) phones.push(await join(room));
  const rows = [];
  let number = 0;
  for (const withinMs of [0, 1000, 10_000]) {
    const all: number[] = [];
    for (let n = 0; n < ROUNDS; n++) {
      all.push(...(await round(screen, phones, { number: ++number, withinMs })));
      // Each phone may vote twice in a second in the long run.
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
    rows.push({
      'all 200 within, ms': withinMs,
      votes: all.length,
      'median, ms': share(all, 0.5),
      'p95, ms': share(all, 0.95),
      'worst, ms': share(all, 1)
    });
  }
  for (const { drop } of [screen, ...phones]) drop();
  await room.stop();
  return rows;
}

let done = false;
bench(
  'votes of 200 phones, from the hand to the screen',
  async () => {
    if (done) return;
    done = true;
    const rows = await measure();
    console.info('\nVotes of 200 phones, from the hand to the screen:');
    console.table(rows);
  },
  { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 }
);
