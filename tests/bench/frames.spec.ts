import { expect, test, type CDPSession, type Page } from '@playwright/test';
import { linkFragment, yardFile } from '../../src/lib/share';
import { admit, fit, SceneSchema, YardSchema } from '../../src/lib/yard';

/** Six locos of a fleet, all on the move at once. */
const locos = {
  Knot: 'tank',
  Ruff: 'tender',
  Teal: 'railcar',
  Wigeon: 'shunter',
  Smew: 'diesel',
  Stint: 'tank'
};
/** The yard runs on for so long on screen, and a little more. */
const SHOWN_MS = 1800;
const names = Object.keys(locos);
const roads = ['A', 'D', 'H', 'M', 'S', 'X'];

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly dur?: number;
  /** Time on the processor, µs. */
  readonly tdur?: number;
  readonly pid: number;
  readonly tid: number;
  readonly args?: { readonly name?: string };
}

async function traced(
  cdp: CDPSession,
  during: () => Promise<void>
): Promise<readonly TraceEvent[]> {
  const events: TraceEvent[] = [];
  cdp.on('Tracing.dataCollected', ({ value }) =>
    events.push(...(value as unknown as TraceEvent[]))
  );
  const complete = new Promise((resolve) => cdp.once('Tracing.tracingComplete', resolve));
  await cdp.send('Tracing.start', {
    traceConfig: {
      includedCategories: [
        'devtools.timeline',
        'disabled-by-default-devtools.timeline',
        '__metadata'
      ]
    }
  });
  await during();
  await cdp.send('Tracing.end');
  await complete;
  return events;
}

/** Main-thread work of each frame, ms: what its tasks take from one animation frame to the next. */
function framesMs(events: readonly TraceEvent[]): readonly number[] {
  const frames = events.filter(({ name, ph }) => name === 'FireAnimationFrame' && ph === 'X');
  const main = frames[0];
  if (!main) return [];
  const tasks = events.filter(
    ({ name, tid, pid, tdur }) =>
      name === 'RunTask' && tid === main.tid && pid === main.pid && tdur !== undefined
  );
  const starts = [...new Set(frames.map(({ ts }) => ts))].sort((a, b) => a - b);
  return starts.slice(0, -1).map((from, index) => {
    const to = starts[index + 1] as number;
    const inside = tasks.filter(({ ts, dur = 0 }) => ts + dur > from && ts + dur <= to);
    return inside.reduce((sum, { tdur = 0 }) => sum + tdur, 0) / 1000;
  });
}

const quantile = (all: readonly number[], share: number): number =>
  all.toSorted((a, b) => a - b)[Math.floor(share * (all.length - 1))] as number;

async function open(page: Page): Promise<void> {
  const yard = admit('yard', YardSchema, {
    name: 'Long Quay',
    deckRoads: 24,
    stablingRoads: 12,
    locos: Object.fromEntries(Object.entries(locos).map(([name, shape]) => [name, { shape }]))
  });
  const placed = Object.fromEntries(names.map((name, index) => [name, roads[index]]));
  const scene = fit('scene', yard, admit('scene', SceneSchema, { locos: placed }));
  await page.goto(
    `${(process.env.OHMYARD_URL ?? '').replace(/\/$/, '')}/yard/${linkFragment(yardFile({ yard, scene }))}`
  );
  await expect(page.locator('.yard[data-ready="true"]')).toBeVisible();
  const panel = page.getByRole('group', { name: 'Panel' });
  for (const road of roads) {
    await panel.getByRole('switch', { name: new RegExp(`^Road ${road} `) }).click();
  }
}

test('24 + 12 roads with six locos running: main-thread work per frame', async ({ page }) => {
  await open(page);
  await page.locator('figure.board').scrollIntoViewIfNeeded();
  await page.evaluate(() => scrollTo(0, 0));
  const cdp = await page.context().newCDPSession(page);
  const events = await traced(cdp, async () => {
    // Pressed without scrolling to it; no asking of the page while it draws: that would be its work too.
    await page
      .getByRole('button', { name: 'Watch it go on' })
      .evaluate((button: HTMLButtonElement) => button.click());
    await page.waitForTimeout(SHOWN_MS);
  });
  await expect(page.locator('.extras > [role=status]')).toContainText('Three seconds on.');
  const frames = framesMs(events);
  expect(frames.length).toBeGreaterThan(20);
  expect(quantile(frames, 0.5)).toBeGreaterThan(0);
  console.log(
    `${frames.length} frames: median ${quantile(frames, 0.5).toFixed(1)} ms, 95 % under ${quantile(frames, 0.95).toFixed(1)} ms`
  );
});
