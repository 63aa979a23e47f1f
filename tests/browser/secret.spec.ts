import type { Locator, Page } from '@playwright/test';
import { callPaths, samplePaths } from './lessons';
import { drawnPlan, drawnRows, type DrawnRow } from './picture';
import {
  asked,
  asking,
  guess,
  openTables,
  SHOW_ALL,
  slot,
  stepAt,
  SURENESS,
  visit,
  type Step
} from './step';
import { expect, test } from './test';

/** Words which only a result is told in. */
const results =
  /\bwent (east|west)\b|\bstayed\b|as you said|\bmoves (east|west)\b|\b(stays|stops): |two inks face each other across (plover|heron|curlew|dunlin|avocet)|✓|≠/i;
const ways = ['stays', 'west', 'east'];
const ROWS = 'svg[aria-label^="Rows of"]';
const amps = /\d\.\d\d A/;

const rowsOf = ({ board }: Step, side: string | undefined): Locator =>
  side === undefined ? board.locator(ROWS) : board.locator(`svg[aria-label^="Rows of ${side}."]`);

/** What is asked, and on which of two yards. */
const subjectOf = (name: string) => name.split(', ') as [string, string | undefined];

const isInstrument = (name: string): boolean =>
  name.startsWith('meter ') || name.startsWith('test lamp');

const allRows = async ({ board }: Step): Promise<readonly DrawnRow[]> =>
  (await drawnRows(board.locator(ROWS))).flat();

/** What a row tells, in one line: equal lines tell the same. */
const tells = ({ road, north, south, inks, chevrons, arrows, words }: DrawnRow, name: string) =>
  [road, north, south, inks, chevrons > 0, arrows, words.match(/\d\.\d\d A/g), name].join(' | ');

test.use({ contextOptions: { reducedMotion: 'reduce' } });

for (const path of samplePaths) {
  test.describe(`on ${path}`, () => {
    test('before the call nobody is told: not in the picture, in print, to readers, in words', async ({
      page
    }) => {
      await visit(page, path);
      await openTables(page);
      const steps = await asking(page);
      expect(steps.length).toBeGreaterThan(0);
      for (const step of steps) {
        for (const name of Object.keys(await asked(step))) await isSecret(step, name);
      }
      for (const media of ['screen', 'print'] as const) {
        await page.emulateMedia({ media });
        for (const { root } of steps) {
          expect(await root.evaluate((element) => element.outerHTML)).not.toMatch(results);
          expect(await root.innerText()).not.toMatch(results);
          expect(await root.ariaSnapshot()).not.toMatch(results);
        }
      }
      await expect(
        page.locator('.outcome, .trace li, circle.ring, text.number, g.ghost')
      ).toHaveCount(0);
      const bare = await (await page.request.get(path)).text();
      expect(bare).toContain('</form>');
      expect(bare).not.toMatch(/\bwent (east|west)\b|\bstayed\b|as you said/i);
    });

    test('a hand picks this and that: the board shows its own call only, the button what is missing', async ({
      page
    }) => {
      await visit(page, path);
      for (const step of await asking(page)) {
        const things = Object.entries(await asked(step));
        const before = await withoutCall(step);
        const saying = step.form.locator('.go p');
        for (const [index, [name, options]] of things.entries()) {
          // Readers hear that it waits; a hand can press it all the same.
          await step.button.click({ force: true });
          const missing = things.slice(index).map(([each]) => each);
          const list = missing.join(' and ').replace(/ and (?=.* and )/g, ', ');
          await expect(saying).toHaveText(`First choose: ${list}.`);
          for (const option of options) {
            await slot(step, name).getByRole('radio', { name: option, exact: true }).check();
            expect(await withoutCall(step), `${name}: ${option}`).toBe(before);
          }
        }
        await step.button.press('Enter');
        await expect(saying).toHaveText('First choose: how sure you are.');
        await expect(step.button).toHaveAttribute('aria-disabled', 'true');
        await slot(step, SURENESS).getByRole('radio', { name: 'certain' }).check();
        await expect(saying).toHaveText('Your call is made.');
        expect(await withoutCall(step)).toBe(before);
        await expect(step.status).toHaveText('The result waits for your call.');
        await expect(step.outcome).toHaveCount(0);
      }
    });

    test('what comes of a call stood nowhere before it: on no board whose call is ahead of it, in no words', async ({
      page
    }) => {
      await visit(page, path);
      const texts = await textsWithoutOptions(page);
      const headings = await page.locator('section.step .words h2').allTextContents();
      const boards = await Promise.all(
        headings.map(async (heading) => {
          const step = stepAt(page, heading);
          return (await step.form.count()) > 0 ? allRows(step) : [];
        })
      );
      const steps = await asking(page);
      expect(steps.length).toBeGreaterThan(0);
      for (const step of steps) {
        const heading = await step.root.locator('.words h2').innerText();
        const at = headings.indexOf(heading);
        const things = Object.entries(await asked(step));
        const answers = Object.values(await guess(step));
        // Later steps are closed until the calls ahead of them are made.
        const before = texts.slice(0, at + 1).join(' ');
        for (const answer of answers.filter((each) => !ways.includes(each))) {
          // Other figures and states are words of everyday: only where they are said of something do they tell.
          const [text, told] = / A$/.test(answer)
            ? [before, answer]
            : [texts[at] ?? '', `(?:reads|is|looks|goes|runs) ${answer}`];
          const place = new RegExp(`.{0,40}\\b${told}\\b.{0,20}`, 'i').exec(text)?.[0];
          expect.soft(place, `'${answer}' is told before it is called`).toBeUndefined();
        }
        const names = things
          .filter(([name, options]) => name.startsWith('meter ') || options.includes('west'))
          .map(([name]) => name);
        // A picture alone does not compare two moments, and shows none of several changes.
        const shown = (await Promise.all(names.map((name) => shownAfter(step, name)))).flat();
        for (const [index, rows] of boards.slice(0, at).entries()) {
          const told = rows.flatMap((row) =>
            names.filter((name) => row.words.includes(loco(name))).map((name) => tells(row, name))
          );
          const both = told.filter((line) => shown.includes(line));
          expect.soft(both, `'${headings[index]}' shows what '${heading}' asks`).toEqual([]);
        }
      }
    });

    test('a step is closed until the call before it is made', async ({ page }) => {
      await page.goto(path);
      await expect(page.locator('.play:not([data-ready="true"])')).toHaveCount(0);
      const steps = page.locator('section.step');
      const total = await steps.count();
      for (let index = 0; index < total; index++) {
        await expect(steps.nth(index)).toBeVisible();
        const asks = (await steps.nth(index).locator('form').count()) > 0;
        if (!asks) continue;
        const rest = index + 1 < total ? steps.nth(index + 1) : page.locator('section.end');
        await expect(rest.and(page.locator(':visible'))).toHaveCount(0);
        const heading = await steps.nth(index).locator('.words h2').innerText();
        await guess(stepAt(page, heading));
      }
      await expect(page.getByRole('button', { name: SHOW_ALL })).toHaveCount(0);
    });
  });
}

test('where a meter is asked about, no current is drawn anywhere on its board', async ({
  page
}) => {
  let meters = 0;
  for (const path of callPaths) {
    await visit(page, path);
    for (const step of await asking(page)) {
      const names = Object.keys(await asked(step)).filter((name) => name.startsWith('meter '));
      meters += names.length;
      if (names.length > 0) {
        const chevrons = await step.board.locator('path.chevron').count();
        expect.soft(chevrons, `${path}: ${names.join()}`).toBe(0);
      }
    }
  }
  expect(meters).toBeGreaterThan(0);
});

/** What is asked about is told in no picture, and the table has one short word for it. */
async function isSecret(step: Step, name: string): Promise<void> {
  const [subject] = subjectOf(name);
  if (subject === 'controller') return;
  if (subject.startsWith('lamp ')) await lampIsSecret(step, name);
  else if (isInstrument(subject)) await instrumentIsSecret(step, subject);
  else await locoIsSecret(step, name);
}

const tableOf = ({ root }: Step, side: string | undefined): Locator =>
  root.locator('details', { hasText: side ? `In words: ${side}` : 'In words' });

const tableRow = (step: Step, side: string | undefined, road: string): Locator =>
  tableOf(step, side)
    .locator('tbody tr')
    .filter({ has: step.root.page().locator('th', { hasText: new RegExp(`^${road}$`) }) });

async function lampIsSecret(step: Step, name: string): Promise<void> {
  const [subject, side] = subjectOf(name);
  const [row] = (await drawnRows(rowsOf(step, side)))
    .flat()
    .filter(({ road }) => subject === `lamp ${road}`);
  expect(row?.words).toContain('?');
  expect(row?.words).not.toMatch(/\b(lit|dim|dark)\b/);
  await expect(tableRow(step, side, row?.road ?? '')).toContainText('not told yet');
}

async function instrumentIsSecret(step: Step, subject: string): Promise<void> {
  const figure = subject.replace(/^meter (volts|ohms)$|^test lamp$/, '').replace('meter ', '');
  await expect(
    step.board.locator(ROWS).getByText(figure === '' ? '?' : `${figure} ?`, { exact: true })
  ).toHaveCount(1);
  await expect(step.board.locator('path.chevron, path.ray')).toHaveCount(0);
  if (figure === '') {
    await expect(step.root.locator('details p').last()).toHaveText(
      /not told yet: your call first$/
    );
  }
}

async function locoIsSecret(step: Step, name: string): Promise<void> {
  const [subject, side] = subjectOf(name);
  const rows = (await drawnRows(rowsOf(step, side)))
    .flat()
    .filter(({ stock }) => stock.includes(subject));
  expect(rows.length, `${name} is drawn`).toBeGreaterThan(0);
  const plans = await drawnPlan(step.board.locator('svg[aria-label^="Plan of"]'));
  for (const row of rows) {
    expect(row, name).toMatchObject({
      north: 'not told',
      south: 'not told',
      inks: ['plain'],
      chevrons: 0,
      arrows: 0
    });
    expect(row.words).toContain('your call first');
    expect(row.words).not.toMatch(amps);
    await expect(tableRow(step, side, row.road).locator('td').last()).toHaveText(
      'not told yet: your call first'
    );
    for (const plan of plans) {
      expect(plan).toContainEqual({ road: row.road, north: 'not told', south: 'not told' });
    }
  }
}

/** The board without the ghosts and the words of the reader's own call. */
const withoutCall = ({ board }: Step): Promise<string> =>
  board.evaluate((element) => {
    const copy = element.cloneNode(true) as Element;
    for (const own of copy.querySelectorAll('g.ghost, tspan.call')) own.remove();
    return copy.innerHTML.replace(/<!--.*?-->|\s+(?=<)/g, '');
  });

/** The words of every step, without the options of its call. */
const textsWithoutOptions = (page: Page): Promise<readonly string[]> =>
  page.locator('section.step').evaluateAll((steps) =>
    steps.map((step) => {
      const copy = step.cloneNode(true) as HTMLElement;
      for (const option of copy.querySelectorAll('form label')) option.remove();
      return copy.textContent;
    })
  );

const loco = (name: string): string => {
  const [subject] = name.split(', ') as [string];
  return subject.startsWith('meter ') ? ' A' : subject;
};

async function shownAfter(step: Step, name: string): Promise<readonly string[]> {
  const [, side] = name.split(', ');
  const rows = (await drawnRows(rowsOf(step, side))).flat();
  return rows.filter(({ words }) => words.includes(loco(name))).map((row) => tells(row, name));
}
