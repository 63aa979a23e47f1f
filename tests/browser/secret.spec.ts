import type { Locator } from '@playwright/test';
import { callPaths } from './lessons';
import { drawnPlan, drawnRows, type DrawnRow } from './picture';
import {
  asking,
  guess,
  openTables,
  options,
  slot,
  SHOW_ALL,
  slotNames,
  stepAt,
  SURENESS,
  visit,
  type Step
} from './step';
import { expect, test } from './test';

/** Words which only a result is told in. */
const results =
  /\bwent (east|west)\b|\bstayed\b|as you said|\bmoves (east|west)\b|\b(stays|stops): |two inks face each other across (plover|heron|curlew|dunlin|avocet)|✓|≠/i;
const amps = /\d\.\d\d A/;

const rowsOf = ({ board }: Step, side: string | undefined): Locator =>
  side === undefined
    ? board.locator('svg[aria-label^="Rows of"]')
    : board.locator(`svg[aria-label^="Rows of ${side}."]`);

/** The rows of the picture that show what is asked: that of the loco, or those with a meter. */
async function askedRows(step: Step, name: string): Promise<readonly DrawnRow[]> {
  const [subject, side] = name.split(', ') as [string, string | undefined];
  const rows = (await drawnRows(rowsOf(step, side))).flat();
  return subject.startsWith('meter ')
    ? rows.filter(({ words }) => words.includes('?'))
    : rows.filter(({ words }) => words.includes(subject));
}

const allRows = async ({ board }: Step): Promise<readonly DrawnRow[]> =>
  (await drawnRows(board.locator('svg[aria-label^="Rows of"]'))).flat();

/** What a row tells, in one line: equal lines tell the same. */
const tells = ({ road, north, south, inks, chevrons, arrows, words }: DrawnRow, name: string) =>
  [road, north, south, inks, chevrons > 0, arrows, words.match(/\d\.\d\d A/g), name].join(' | ');

test.use({ contextOptions: { reducedMotion: 'reduce' } });

for (const path of callPaths) {
  test.describe(`on ${path}`, () => {
    test('before the call nobody is told: not in print, to readers, in words or in the page', async ({
      page
    }) => {
      await visit(page, path);
      await openTables(page);
      const steps = await asking(page);
      expect(steps.length).toBeGreaterThan(0);
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

    test('before the call the rows asked about are plain lines, without arrow or figure', async ({
      page
    }) => {
      await visit(page, path);
      await openTables(page);
      for (const step of await asking(page)) {
        for (const name of await slotNames(step)) {
          const rows = await askedRows(step, name);
          expect(rows.length, `${name} is drawn`).toBeGreaterThan(0);
          for (const row of rows) {
            expect(row).toMatchObject({
              north: 'not told',
              south: 'not told',
              inks: ['plain'],
              chevrons: 0,
              arrows: 0
            });
            expect(row.words).toContain('your call first');
            expect(row.words).not.toMatch(amps);
          }
          const side = name.split(', ')[1];
          const table =
            side === undefined
              ? step.root.getByRole('table')
              : step.root.locator('details', { hasText: `In words: ${side}` }).getByRole('table');
          for (const { road } of rows) {
            const line = table.getByRole('row').filter({
              has: page.getByRole('rowheader', { name: road, exact: true })
            });
            await expect(line.getByRole('cell')).toHaveText([
              /^(on|off|none)$/,
              'not told yet: your call first'
            ]);
            for (const plan of await drawnPlan(step.board.locator('svg[aria-label^="Plan of"]'))) {
              expect(plan).toContainEqual({ road, north: 'not told', south: 'not told' });
            }
          }
        }
      }
    });

    test('where a meter is asked about, no current is drawn anywhere', async ({ page }) => {
      await visit(page, path);
      for (const step of await asking(page)) {
        const names = await slotNames(step);
        const asksMeter = names.some((name) => name.startsWith('meter '));
        if (asksMeter) await expect(step.board.locator('path.chevron')).toHaveCount(0);
        expect(names.length).toBeGreaterThan(0);
      }
    });

    test('a hand picks this and that: the board shows its own call and nothing else', async ({
      page
    }) => {
      await visit(page, path);
      const board = ({ board: figure }: Step) =>
        figure.evaluate((element) => {
          const copy = element.cloneNode(true) as Element;
          for (const own of copy.querySelectorAll('g.ghost, tspan.call')) own.remove();
          return copy.innerHTML.replace(/<!--.*?-->|\s+(?=<)/g, '');
        });
      for (const step of await asking(page)) {
        const before = await board(step);
        for (const name of await slotNames(step)) {
          for (const option of await options(step, name)) {
            await slot(step, name).getByRole('radio', { name: option, exact: true }).check();
            expect(await board(step), `${name}: ${option}`).toBe(before);
          }
        }
        await slot(step, SURENESS).getByRole('radio', { name: 'certain' }).check();
        expect(await board(step)).toBe(before);
        await expect(step.status).toHaveText('The result waits for your call.');
      }
    });

    test('a hand presses the button before the call is whole: it says what is missing', async ({
      page
    }) => {
      await visit(page, path);
      for (const step of await asking(page)) {
        const names = await slotNames(step);
        const saying = step.form.locator('.go p');
        for (const [index, name] of names.entries()) {
          // Readers hear that it waits; a hand can press it all the same.
          await step.button.click({ force: true });
          const missing = names.slice(index);
          const list = missing.join(' and ').replace(/ and (?=.* and )/g, ', ');
          await expect(saying).toHaveText(`First choose: ${list}.`);
          await slot(step, name).getByRole('radio').first().check();
        }
        await step.button.press('Enter');
        await expect(saying).toHaveText('First choose: how sure you are.');
        await expect(step.button).toHaveAttribute('aria-disabled', 'true');
        await expect(step.outcome).toHaveCount(0);
        await expect(step.status).toHaveText('The result waits for your call.');
      }
    });

    test('what the board shows after the call stood on no board whose call came before', async ({
      page
    }) => {
      await visit(page, path);
      const headings = await page.locator('section.step:has(form) .words h2').allTextContents();
      const before = new Map<string, readonly DrawnRow[]>();
      for (const heading of headings) before.set(heading, await allRows(stepAt(page, heading)));
      for (const step of await asking(page)) {
        const heading = await step.root.locator('.words h2').innerText();
        const names = await slotNames(step);
        const shows = (await asksWay(step)) || names.some((name) => name.startsWith('meter '));
        await guess(step);
        // A picture alone does not compare two moments, and shows none of several changes.
        if (!shows) continue;
        const shown = (await Promise.all(names.map((name) => shownAfter(step, name)))).flat();
        // Later steps are closed until the calls ahead of them are made.
        const others = [...before].slice(0, headings.indexOf(heading));
        for (const [other, rows] of others) {
          const told = rows.flatMap((row) =>
            names.filter((name) => row.words.includes(loco(name))).map((name) => tells(row, name))
          );
          const both = told.filter((line) => shown.includes(line));
          expect(both, `'${other}' shows what '${heading}' asks`).toEqual([]);
        }
      }
    });

    test('the words of the right option stand in no step before its call', async ({ page }) => {
      await visit(page, path);
      const texts = await page.locator('section.step').evaluateAll((steps) =>
        steps.map((step) => {
          const copy = step.cloneNode(true) as HTMLElement;
          for (const option of copy.querySelectorAll('form label')) option.remove();
          return copy.textContent;
        })
      );
      const headings = await page.locator('section.step .words h2').allTextContents();
      for (const step of await asking(page)) {
        const at = headings.indexOf(await step.root.locator('.words h2').innerText());
        const text = texts.slice(0, at + 1).join(' ');
        const answers = Object.values(await guess(step));
        const words = answers.filter((answer) => !/^(stays|west|east)$/.test(answer));
        for (const answer of words) {
          const place = new RegExp(`.{0,40}\\b${answer}\\b.{0,20}`, 'i').exec(text)?.[0];
          expect(place, `'${answer}' is told before it is called`).toBeUndefined();
        }
        expect(answers.length).toBeGreaterThan(0);
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

const asksWay = async (step: Step): Promise<boolean> =>
  (await step.form.getByRole('radio', { name: 'west', exact: true }).count()) > 0;

const loco = (name: string): string => {
  const [subject] = name.split(', ') as [string];
  return subject.startsWith('meter ') ? ' A' : subject;
};

async function shownAfter(step: Step, name: string): Promise<readonly string[]> {
  const [, side] = name.split(', ');
  const rows = (await drawnRows(rowsOf(step, side))).flat();
  return rows.filter(({ words }) => words.includes(loco(name))).map((row) => tells(row, name));
}
