import { samplePaths } from './lessons';
import { drawnPlan, drawnRows, type DrawnRow } from './picture';
import { asking, call, guess, line, openHome, START, stepAt, visit, type Step } from './step';
import { expect, test } from './test';

const ROWS = 'svg[aria-label^="Rows of"]';
const PLAN = 'svg[aria-label^="Plan of"]';

const words = (text: string): number => text.split(/\s+/).filter((word) => /\w/.test(word)).length;

test.use({ contextOptions: { reducedMotion: 'reduce' } });

for (const path of samplePaths) {
  test(`hands do all there is to do on ${path}: each message has at most twenty words, and the table says what is drawn`, async ({
    page
  }) => {
    test.slow();
    await visit(page, path);
    for (const step of await asking(page)) await guess(step);
    const boards = await page.locator('section.step:has(figure) .words h2').allTextContents();
    for (const heading of boards) {
      const step = stepAt(page, heading);
      const single = (await step.root.locator('details').count()) === 1;
      const agree = async (after: string) => {
        const text = await step.status.innerText();
        if (single) expect(words(text), `${heading}: '${text}'`).toBeLessThanOrEqual(20);
        expect(await disagreements(step), `${heading}, ${after}`).toEqual([]);
      };
      await agree('at first');
      for (const each of await step.panel.getByRole('switch').all()) {
        const state = async () => [
          await each.getAttribute('aria-checked'),
          await step.status.innerText()
        ];
        const was = await state();
        await each.click();
        // A pin that finds no hole stays as it is, and says why.
        await expect.poll(state).not.toEqual(was);
        await agree(`after ${await each.innerText()}`);
      }
      const knob = step.panel.getByRole('slider').first();
      // The knob may stand at either end already.
      await knob.press('End');
      for (const key of ['Home', 'End']) {
        await knob.press(key);
        await expect(step.status).toHaveText(/^Knob 12\.0 V/);
        await agree(`after ${key}`);
      }
      for (const [name, said] of [
        ['Centre', 'Knob centre'],
        ['Watch it go on', 'Three seconds on.'],
        ['Back to the start', START]
      ] as const) {
        await step.panel.getByRole('button', { name }).first().click();
        await expect(step.status).toContainText(said);
        await agree(`after ${name}`);
      }
    }
    expect(boards.length).toBeGreaterThan(0);
  });
}

test('a rail part way is told with its volts in the table', async ({ page }) => {
  await visit(page, '/lessons/02-the-same-all-the-way/');
  const step = stepAt(page, 'Before or after?');
  await guess(step);
  const [row] = (await drawnRows(step.board.locator('svg'))).flat();
  expect([row?.north, row?.south]).toContain('part way');
  await expect(step.root.locator('tbody tr')).toContainText(/\d\.\d V/);
});

test('an off road with a loco: both rails at the return, one of them only through the loco', async ({
  page
}) => {
  const step = await openHome(page);
  await step.root.getByText('In words').click();
  await expect(line(step, 'A')).toHaveText([
    'on',
    'joined to the feed',
    'joined to the return',
    /^Plover runs east, 0\.\d\d A$/,
    'whole, out and home'
  ]);
  await expect(line(step, 'B')).toHaveText([
    'off',
    'at return level, only through Heron',
    'joined to the return',
    'Heron stands, 0.00 A',
    'open at toggle B'
  ]);
  const [, row] = (await drawnRows(step.board.locator('svg'))).flat();
  expect(row).toMatchObject({
    road: 'B',
    north: 'joined to the return',
    south: 'at return level, only through',
    chevrons: 0,
    arrows: 0
  });
});

test('an empty off road: its feed rail is joined to nothing', async ({ page }) => {
  await visit(page, '/lessons/04-more-roads/');
  const step = stepAt(page, 'Try it first');
  await step.root.getByText('In words').click();
  await expect(line(step, 'C')).toHaveText([
    'off',
    'joined to nothing',
    'joined to the return',
    'none',
    'open at toggle C'
  ]);
  const rows = (await drawnRows(step.board.locator(ROWS))).flat();
  expect(rows[2]).toMatchObject({
    road: 'C',
    north: 'joined to the return',
    south: 'joined to nothing'
  });
});

test('not told yet, joined to nothing and through a loco are drawn each in its own way', async ({
  page
}) => {
  await visit(page, '/lessons/04-more-roads/');
  const step = stepAt(page, 'Try it first');
  const rows = async () => (await drawnRows(step.board.locator(ROWS))).flat();
  const before = await rows();
  expect(before.map(({ south }) => south)).toEqual([
    'joined to nothing',
    'not told',
    'joined to nothing',
    'not told'
  ]);
  const look = (selector: string) =>
    step.board
      .locator(`${ROWS} ${selector}`)
      .first()
      .evaluate((path) => {
        const { stroke, strokeDasharray, strokeWidth } = getComputedStyle(path);
        return { stroke, dashed: strokeDasharray !== 'none', width: parseFloat(strokeWidth) };
      });
  const plain = await look('path.plain');
  const hollow = await look('path.casing[stroke-dasharray]');
  expect(plain).toMatchObject({ dashed: false, width: 1.5 });
  expect(hollow).toMatchObject({ dashed: true });
  expect(hollow.width).toBeGreaterThan(4 * plain.width);
  await call(step, { picks: { Plover: 'east', Heron: 'stays' }, sure: 'fairly' });
  expect((await rows()).map(({ south }) => south)).toEqual([
    'joined to nothing',
    'joined to the feed',
    'joined to nothing',
    'at return level, only through'
  ]);
  const broken = await look('path.return[stroke-dasharray]');
  expect(broken).toMatchObject({ dashed: true });
  expect(broken.stroke).not.toBe(plain.stroke);
  await expect(step.board.locator('path.plain')).toHaveCount(0);
});

test('the lesson that wants plan and rows shows both, and both tell the same of each road', async ({
  page
}) => {
  for (const [path, heading] of [
    ['/lessons/01-out-and-home/', 'Out by the feed, home by the return'],
    ['/lessons/04-more-roads/', 'Try it first']
  ] as const) {
    await visit(page, path);
    const step = stepAt(page, heading);
    await expect(step.board.locator(PLAN)).toBeVisible();
    await expect(step.board.locator(ROWS)).toBeVisible();
    expect((await drawnPlan(step.board.locator(PLAN))).flat()).toEqual(await railsInRows(step));
  }
  const step = stepAt(page, 'Try it first');
  await call(step, { picks: { Plover: 'east', Heron: 'stays' }, sure: 'fairly' });
  expect((await drawnPlan(step.board.locator(PLAN))).flat()).toEqual(await railsInRows(step));
});

for (const [screen, width, paths] of [
  ['a desk', 1280, samplePaths],
  ['a phone', 390, ['/']]
] as const) {
  test.describe(`on ${screen}`, () => {
    test.use({ viewport: { width, height: 844 } });

    test('the numbers of a trace cover no word, and words do not cover each other', async ({
      page
    }) => {
      test.slow();
      let traced = 0;
      for (const path of paths) {
        await visit(page, path);
        for (const step of await asking(page)) {
          await guess(step);
          // Where both rails have one ink there is no way to trace.
          const trace = step.root.getByRole('button', { name: 'Trace it, step by step' });
          if ((await trace.count()) > 0) {
            await trace.click();
            await step.root.getByRole('button', { name: 'All steps' }).click();
          }
          traced += await step.board.locator('text.number').count();
          const heading = await step.root.locator('.words h2').innerText();
          expect.soft(await overlaps(step), `${path} ${heading}`).toEqual([]);
        }
      }
      expect(traced).toBeGreaterThan(0);
    });
  });
}

/** Numbers and words of the drawing that lie on one another, in pairs. */
const overlaps = ({ board }: Step): Promise<readonly string[]> =>
  board.locator(`${ROWS} circle.step, ${ROWS} text:not(.number)`).evaluateAll((all) => {
    const boxes = all.map((element) => {
      const box = element.getBoundingClientRect();
      const number = element.nextElementSibling?.textContent;
      const text = element.tagName === 'circle' ? `(${number})` : element.textContent?.trim();
      // Letters do not fill the height of their line.
      const rest = element.tagName === 'circle' ? 1 : box.height / 4;
      return { text, ...box.toJSON(), top: box.top + rest, bottom: box.bottom - rest };
    });
    return boxes.flatMap((a, index) =>
      boxes
        .slice(index + 1)
        .filter(
          (b) =>
            a.text &&
            b.text &&
            a.left < b.right - 1 &&
            b.left < a.right - 1 &&
            a.top < b.bottom &&
            b.top < a.bottom
        )
        .map((b) => `'${a.text}' on '${b.text}'`)
    );
  });

const railsInRows = async ({ board }: Step) =>
  (await drawnRows(board.locator(ROWS)))
    .flat()
    .map(({ road, north, south }) => ({ road, north, south }));

/** Where the table and the rows drawn beside it do not say the same. */
async function disagreements({ root, board }: Step): Promise<readonly string[]> {
  const pictures = await drawnRows(board.locator(ROWS));
  const tables = await root
    .locator('details tbody')
    .evaluateAll((bodies) =>
      bodies.map((body) =>
        [...body.children].map((row) => [...row.children].map((cell) => cell.textContent ?? ''))
      )
    );
  expect(tables.length).toBe(pictures.length);
  return pictures.flatMap((rows, index) => rows.flatMap((row) => mismatch(row, tables[index])));
}

function mismatch(row: DrawnRow, table: readonly (readonly string[])[] = []): readonly string[] {
  const cells = table.find(([road]) => road === row.road) ?? [];
  const [, state = ''] = cells;
  const [feed = '', home = '', loco = ''] = cells.slice(-4);
  // Both feeds have one ink; which of them it is, the leg's letter says.
  const says = (told: string, drawn: string) =>
    drawn === 'part way' ||
    told.replace(/^joined to feed 2/, 'joined to the feed').startsWith(drawn);
  const runs = /runs (east|west)/.test(loco);
  return [
    ...(says(feed, row.south) ? [] : [`${row.road}: '${feed}', drawn '${row.south}'`]),
    ...(says(home, row.north) ? [] : [`${row.road}: '${home}', drawn '${row.north}'`]),
    ...(/^. (on|off)\b/.test(row.words) && !row.words.startsWith(`${row.road} ${state}`)
      ? [`${row.road}: switch '${state}', drawn '${row.words}'`]
      : []),
    ...(runs === row.arrows > 0 ? [] : [`${row.road}: '${loco}', drawn with ${row.arrows} arrows`])
  ];
}
