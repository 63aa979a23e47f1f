import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { linkFragment, yardFile } from '../../src/lib/share';
import { admit, fit, SceneSchema, YardSchema, type YardInput } from '../../src/lib/yard';
import { pressByKeys } from './keys';
import { expect, test } from './test';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const demo: YardInput = { name: 'Quillby Quay', deckRoads: 5, stablingRoads: 4 };
const checks = (page: Page): Locator => page.locator('.checks');
const part = (page: Page, name: string): Locator =>
  page.getByRole('group', { name: 'Part of the page' }).getByRole('button', { name });
const finding = (page: Page, words: RegExp): Locator =>
  page.getByRole('article').filter({ hasText: words });

async function open(page: Page, input: YardInput): Promise<void> {
  const yard = admit('yard', YardSchema, input);
  const scene = fit('scene', yard, admit('scene', SceneSchema, {}));
  await page.goto(`/yard/${linkFragment(yardFile({ yard, scene }))}`);
  await expect(page.locator('.yard[data-ready="true"]')).toBeVisible();
}

async function checked(page: Page, input: YardInput): Promise<void> {
  await open(page, input);
  await part(page, 'Checks').click();
  await expect(checks(page)).toHaveAttribute('data-stand', 'done', { timeout: 90_000 });
}

test('the yard as built: its running road stays live with no deck road before it, with the cure and a board', async ({
  page
}) => {
  await checked(page, demo);
  const breach = finding(page, /gap\?\s*Road Q can be live/);
  await expect(breach).toContainText('while its east end faces nothing');
  await expect(breach).toContainText(/\d of [\d\s]+ states are unsafe/);
  await expect(breach).toContainText('running holes');
  await expect(page.getByRole('heading', { name: /^Must fix 1/ })).toBeVisible();

  await breach.getByRole('button', { name: 'See it on the board' }).click();
  await expect(page.getByText('On the board: Road Q can be live')).toBeVisible();
  const words = page.getByRole('status').filter({ hasText: /falls|gap/i });
  await page.getByRole('button', { name: 'Watch what happens' }).click();
  await expect(words.first()).toBeVisible();

  await page.getByRole('button', { name: 'Back to my board' }).click();
  await expect(page.getByText('On the board:')).toHaveCount(0);
  await expect(breach.getByRole('button', { name: 'See it on the board' })).toBeFocused();

  await breach.getByRole('button', { name: 'Build it that way' }).press('Enter');
  await expect(page.locator('.proof')).toContainText('Proved: with the pin home');
  await expect(page.getByRole('button', { name: 'Take it back' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(breach).toBeVisible();
});

test('with a switch and running-hole contacts it is proved, and says what the proof rests on', async ({
  page
}) => {
  await checked(page, { ...demo, runningRoad: 'interlocked' });
  const proof = page.locator('.proof');
  await expect(proof).toContainText(
    'Proved: with the pin home, no loco can be driven into the gap.'
  );
  await expect(proof).toContainText('No loco coasts on, or is pushed');
  await expect(proof).toContainText(/2\^11 settings of 11 switches × \d+ places/);
  await expect(page.getByRole('heading', { name: /^Must fix/ })).toHaveCount(0);
  await proof.getByRole('button', { name: 'See it on the board' }).click();
  await expect(page.getByText('On the board: Proved')).toBeVisible();
  await page.getByRole('button', { name: 'Watch it go on' }).click();
  await expect(page.getByRole('status').filter({ hasText: /falls into the gap/ })).toHaveCount(0);
  await expect(checks(page)).toContainText('All of this concerns model locos only.');
  await expect(checks(page).getByRole('list').last().getByRole('listitem')).toHaveCount(5);
});

test('one thing fails: a table folded by kind, each fault one press from its board', async ({
  page
}) => {
  await checked(page, { ...demo, runningRoad: 'interlocked' });
  await page.locator('.checks summary').filter({ hasText: 'A contact never opens' }).click();
  const row = page.getByRole('row').filter({ hasText: 'Pin contact Q never opens.' });
  await expect(row).toContainText('In everyday use nothing shows it.');
  await expect(row).toContainText('A test lamp across the rails of Q must stay dark.');
  await row.getByRole('button', { name: 'See it on the board' }).click();
  await expect(page.getByText('On the board: Pin contact Q never opens.')).toBeVisible();
  await expect(checks(page)).toContainText('Two faults at once are tried in small yards only');
});

test('a long check is cancelled, keeps what it found, and begins again when the yard changes', async ({
  page
}) => {
  await open(page, { name: 'Long', deckRoads: 40, stablingRoads: 20 });
  await part(page, 'Checks').click();
  await expect(finding(page, /Road Q can be live/)).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole('progressbar')).toBeVisible();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(checks(page)).toHaveAttribute('data-stand', 'cancelled');
  await expect(page.getByText(/^The checks were stopped. So far: 1 must fix/)).toBeVisible();
  await expect(finding(page, /Road Q can be live/)).toBeVisible();

  await part(page, 'Build').click();
  await page.getByLabel('Storage roads on the deck', { exact: true }).fill('1');
  await page.getByLabel('Stabling roads', { exact: true }).fill('1');
  await part(page, 'Checks').click();
  await expect(checks(page)).toHaveAttribute('data-stand', 'done', { timeout: 60_000 });
});

test('the page answers while the checks of a long yard run', async ({ page }) => {
  await open(page, { name: 'Long', deckRoads: 40, stablingRoads: 20 });
  await part(page, 'Checks').click();
  await expect(page.getByRole('progressbar')).toBeVisible();
  const slowest = await page.evaluate(async () => {
    let last = performance.now();
    let most = 0;
    for (let count = 0; count < 60; count++) {
      await new Promise((done) => requestAnimationFrame(done));
      const now = performance.now();
      most = Math.max(most, now - last);
      last = now;
    }
    return most;
  });
  expect(slowest, 'longest wait for a frame, ms').toBeLessThan(1000);
  await expect(checks(page)).toHaveAttribute('data-stand', 'running');
});

test('by keyboard alone: checks, a scene on the board, and back', async ({ page }) => {
  await open(page, { deckRoads: 1, stablingRoads: 1 });
  await pressByKeys(page, part(page, 'Checks'));
  await expect(checks(page)).toHaveAttribute('data-stand', 'done', { timeout: 60_000 });
  const see = page.getByRole('button', { name: 'See it on the board' }).first();
  await pressByKeys(page, see);
  await expect(page.getByText('On the board:')).toBeVisible();
  await pressByKeys(page, page.getByRole('button', { name: 'Back to my board' }));
  await expect(see).toBeFocused();

  const limit = page.getByLabel('Wires may take');
  await limit.fill('much');
  await limit.press('Enter');
  await expect(checks(page).getByRole('alert')).toContainText('give 1 to 50 %');
  await limit.fill('5');
  await limit.press('Enter');
  await expect(checks(page)).toContainText('your limit is 5 %', { timeout: 60_000 });

  await pressByKeys(page, page.getByRole('link', { name: 'How the gap proof works' }));
  await expect(page.getByRole('heading', { name: 'How the gap proof works' })).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: 'Mains stays closed' })).toBeVisible();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`nothing bars the way in the checks on ${colorScheme} paper`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await checked(page, { deckRoads: 1, stablingRoads: 1, lamps: 'own' });
    await expect(checks(page)).toContainText('2 pairs hide what would show with one of them alone');
    for (const summary of await page.locator('.checks summary').all()) await summary.click();
    const { violations } = await new AxeBuilder({ page }).include('.checks').analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  });
}
