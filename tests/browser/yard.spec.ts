import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { tabTo } from './keys';
import { expect, test } from './test';

test.use({
  contextOptions: { reducedMotion: 'reduce', permissions: ['clipboard-read', 'clipboard-write'] }
});

const yard = '/yard/';
const field = (page: Page, name: string): Locator => page.getByLabel(name, { exact: true });
const toggles = (page: Page): Locator =>
  page.getByRole('group', { name: 'Panel' }).getByRole('switch', { name: /^Road / });

async function open(page: Page, address = yard): Promise<void> {
  await page.goto(address);
  await expect(page.locator('.yard[data-ready="true"]')).toBeVisible();
}

async function fill(page: Page, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, value] of Object.entries(values)) await field(page, name).fill(value);
}

async function copiedLink(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Copy a link' }).click();
  await expect(page.getByText('The link is copied')).toBeVisible();
  return page.evaluate(() => navigator.clipboard.readText());
}

test('a yard of nine and three is built by keyboard, kept, and opened by a friend from its link', async ({
  page,
  browser
}) => {
  await open(page);
  let steps = 0;
  for (const [name, value] of [
    ['Name of the yard', 'Mill Siding'],
    ['Storage roads on the deck', '9'],
    ['Stabling roads', '3']
  ] as const) {
    await tabTo(page, field(page, name));
    await page.keyboard.press('Control+a');
    await page.keyboard.type(value);
    steps += 2 + value.length;
  }
  expect(steps, 'keys beside the Tab key').toBeLessThan(60);
  await expect(toggles(page)).toHaveCount(9 + 1 + 3);
  await page.reload();
  await expect(page.locator('.yard[data-ready="true"]')).toBeVisible();
  await expect(field(page, 'Name of the yard')).toHaveValue('Mill Siding');
  await expect(field(page, 'Storage roads on the deck')).toHaveValue('9');

  const link = await copiedLink(page);
  expect(link.length).toBeLessThan(2000);
  const friend = await browser.newContext({ reducedMotion: 'reduce' });
  const theirs = await friend.newPage();
  await open(theirs, link);
  await expect(field(theirs, 'Name of the yard')).toHaveValue('Mill Siding');
  await expect(toggles(theirs)).toHaveCount(13);
  expect(theirs.url()).not.toContain('#');
  await friend.close();
});

test('what does not fit is told beside its field, and kept until it is put right', async ({
  page
}) => {
  await open(page);
  await fill(page, { 'Storage roads on the deck': '400' });
  await expect(page.getByText('Not 400. Allowed: 1 to 40 deck roads.')).toBeVisible();
  await expect(field(page, 'Storage roads on the deck')).toHaveValue('400');
  await expect(toggles(page)).toHaveCount(5 + 1 + 4);
  await fill(page, { 'Storage roads on the deck': '4' });
  await expect(page.getByText(/^Not 400/)).toHaveCount(0);
  await expect(toggles(page)).toHaveCount(4 + 1 + 4);
});

test('twenty steps are taken back, and done again', async ({ page }) => {
  await open(page);
  const name = field(page, 'Name of the yard');
  for (let step = 1; step <= 20; step++) {
    await name.fill(`Yard ${step}`);
    await name.blur();
  }
  for (let step = 0; step < 20; step++) await page.getByRole('button', { name: 'Undo' }).click();
  await expect(name).toHaveValue('My yard');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  for (let step = 0; step < 20; step++) await page.getByRole('button', { name: 'Redo' }).click();
  await expect(name).toHaveValue('Yard 20');
});

test('two variants stand side by side, and their difference is told', async ({ page }) => {
  await open(page);
  await page.getByLabel('Beside it, the same yard with').selectOption('return as a ring');
  const table = page.getByRole('table', { name: 'What changes' });
  await expect(table.getByRole('row', { name: /^Wires/ })).toBeVisible();
  await expect(page.locator('figure.board svg')).toHaveCount(2);
  await page.getByRole('button', { name: 'Build it that way' }).click();
  await page.getByText('Wiring', { exact: true }).click();
  await expect(field(page, 'Return')).toHaveValue('ring');
});

test('hostile names are text everywhere', async ({ page }) => {
  await open(page);
  const name = '<img src=x onerror=alert(1)>\u202egnp';
  await fill(page, { 'Name of the yard': name });
  await expect(page.locator('main img')).toHaveCount(0);
  await expect(page.getByText('<img src=x onerror=alert(1)>').first()).toBeVisible();
});

test('a link that was cut says so and leaves the yard alone', async ({ page }) => {
  await open(page);
  await fill(page, { 'Name of the yard': 'Stays' });
  const link = await copiedLink(page);
  await field(page, 'Open a link').fill(link.slice(0, -20));
  await page.getByRole('button', { name: 'Open it' }).click();
  await expect(
    page.getByText(/This link breaks off before its end.*Your yards stay/)
  ).toBeVisible();
  await expect(field(page, 'Name of the yard')).toHaveValue('Stays');
});

for (const [kind, button] of [
  ['a file', 'Save a file'],
  ['an SVG picture', 'Save an SVG picture'],
  ['a PNG picture', 'Save a PNG picture']
] as const) {
  test(`${kind} carries the yard and opens again`, async ({ page }) => {
    await open(page);
    await fill(page, { 'Name of the yard': 'Carried', 'Storage roads on the deck': '3' });
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: button }).click();
    const path = await (await download).path();
    await fill(page, { 'Name of the yard': 'Another' });
    await field(page, 'Open a file or picture').setInputFiles({
      name: 'carried',
      mimeType: 'application/octet-stream',
      buffer: await (await import('node:fs/promises')).readFile(path)
    });
    await expect(page.getByText('Carried is open, as a yard of its own.')).toBeVisible();
    await expect(toggles(page)).toHaveCount(3 + 1 + 4);
  });
}

test('a yard is copied, deleted and brought back', async ({ page }) => {
  await open(page);
  await fill(page, { 'Name of the yard': 'First' });
  await page.getByRole('button', { name: 'Duplicate' }).click();
  await expect(field(page, 'Name of the yard')).toHaveValue('First, copy');
  await page.getByRole('button', { name: 'Delete' }).click();
  await expect(field(page, 'Name of the yard')).toHaveValue('First');
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await expect(field(page, 'Name of the yard')).toHaveValue('First, copy');
  await expect(page.getByLabel('Yards on this device').locator('option')).toHaveCount(2);
});

test('two tabs on one yard never overwrite each other silently', async ({ page, context }) => {
  await open(page);
  await fill(page, { 'Name of the yard': 'Mine' });
  const other = await context.newPage();
  await open(other);
  await fill(other, { 'Name of the yard': 'Theirs' });
  await fill(page, { 'Name of the yard': 'Mine again' });
  await expect(page.getByText(/Another tab has changed this yard/)).toBeVisible();
  await page.getByRole('button', { name: 'Keep both' }).click();
  await expect(page.getByLabel('Yards on this device').locator('option')).toHaveText([
    'Mine again',
    'Theirs'
  ]);
});

test('where the browser keeps nothing the page works, and says so', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('denied', 'SecurityError');
      }
    });
  });
  await open(page);
  await fill(page, { 'Storage roads on the deck': '2' });
  await expect(page.getByText(/keeps nothing for this page/).first()).toBeVisible();
  await expect(toggles(page)).toHaveCount(2 + 1 + 4);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`nothing bars the way on ${colorScheme} paper`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await open(page);
    for (const summary of await page.locator('.builder summary').all()) await summary.click();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  });
}
