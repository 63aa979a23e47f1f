import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { tabTo } from './keys';
import { drawnRows } from './picture';
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

test('what did not fit is taken once another field has made room for it', async ({ page }) => {
  await open(page);
  await fill(page, { 'Storage roads on the deck': '1' });
  await expect(page.getByText(/^Not 1\./)).toBeVisible();
  await fill(page, { 'Stabling roads': '0' });
  await expect(page.getByText(/^Not 1\./)).toHaveCount(0);
  await expect(toggles(page)).toHaveCount(1);
});

/** Pairs of words of one drawing that lie on each other; letters are lower than their boxes. */
const onEachOther = (page: Page): Promise<readonly string[]> =>
  page.locator('figure.board svg').evaluateAll((drawings) =>
    drawings.flatMap((drawing) => {
      const words = [...drawing.querySelectorAll('text')].flatMap((text) => {
        const { left, right, top, bottom, height } = text.getBoundingClientRect();
        const said = text.textContent?.trim() ?? '';
        const slim = height / 4;
        return said ? [{ said, left, right, top: top + slim, bottom: bottom - slim }] : [];
      });
      return words.flatMap((one, index) =>
        words
          .slice(index + 1)
          .filter(
            (other) =>
              one.left < other.right &&
              other.left < one.right &&
              one.top < other.bottom &&
              other.top < one.bottom
          )
          .map((other) => `${one.said} on ${other.said}`)
      );
    })
  );

/** Words that reach out of their drawing. */
const outside = (page: Page): Promise<readonly string[]> =>
  page.locator('figure.board svg').evaluateAll((drawings) =>
    drawings.flatMap((drawing) => {
      const box = drawing.getBoundingClientRect();
      return [...drawing.querySelectorAll('text')]
        .filter((text) => {
          const { left, right, top, bottom } = text.getBoundingClientRect();
          const over = left < box.left || right > box.right;
          return over || top < box.top - 2 || bottom > box.bottom + 2;
        })
        .map(({ textContent }) => textContent ?? '');
    })
  );

for (const width of [1280, 390]) {
  test(`from one road to forty and twenty no word is clipped or lies on another, ${width} px wide`, async ({
    page
  }) => {
    await page.setViewportSize({ width, height: 800 });
    await open(page);
    await page.getByText('Names of roads', { exact: true }).click();
    await fill(page, { 'Road A': 'Harbour', 'Road B': 'Branch passenger set', 'Road 1': 'Shed' });
    for (const [deck, stabling] of [
      [40, 20],
      [24, 12],
      [12, 6],
      [5, 4],
      [1, 0]
    ] as const) {
      await fill(page, {
        'Storage roads on the deck': String(deck),
        'Stabling roads': String(stabling)
      });
      await expect(toggles(page)).toHaveCount(deck + stabling + (stabling > 0 ? 1 : 0));
      const views = width < 560 ? ['plan', 'rows', 'panel'] : ['all'];
      for (const view of views) {
        if (view !== 'all') await page.getByRole('button', { name: view, exact: true }).click();
        const which = `${deck}+${stabling}, ${view}`;
        expect(await onEachOther(page), which).toEqual([]);
        expect(await outside(page), which).toEqual([]);
      }
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide, 'nothing reaches out of the page').toBeLessThanOrEqual(width);
    }
  });
}

test('rows that stand close are read like others', async ({ page }) => {
  await open(page);
  await fill(page, { 'Storage roads on the deck': '24', 'Stabling roads': '12' });
  await toggles(page).filter({ hasText: 'Road C' }).click();
  const [rows = []] = await drawnRows(page.locator('svg[aria-label^="Rows of"]'));
  expect(rows).toHaveLength(1 + 24 + 1 + 12);
  const row = (name: string) => rows.find(({ road }) => road === name);
  expect(row('A')).toMatchObject({
    north: 'joined to the return',
    south: 'at return level, only through',
    stock: 'Heron',
    words: 'Heron A off'
  });
  expect(row('B')).toMatchObject({ south: 'joined to nothing', stock: '', words: 'B off' });
  expect(row('C')).toMatchObject({ south: 'joined to the feed', words: 'C on' });
  expect(row('12')).toMatchObject({ south: 'joined to nothing', words: '12 off' });
});

test("the owner's names of roads stand on every drawing and in the table", async ({ page }) => {
  await open(page);
  await page.getByText('Names of roads', { exact: true }).click();
  await fill(page, { 'Road B': 'Branch goods' });
  for (const drawing of ['Plan of', 'Rows of', 'Panel of']) {
    await expect(page.locator(`svg[aria-label^="${drawing}"]`)).toContainText('Branch goods');
  }
  await page.getByText('In words', { exact: true }).click();
  await expect(page.getByRole('row', { name: /^B Branch goods/ })).toBeVisible();
});

test('colours of wires stand on the circuit diagram as letters', async ({ page }) => {
  await open(page);
  await page.getByText('Wiring', { exact: true }).click();
  await field(page, 'Wire colours').selectOption('NEM 605');
  await field(page, 'Feed: colour').selectOption('OG');
  await page.getByText('Circuit diagram', { exact: true }).click();
  const diagram = page.locator('svg[aria-label^="Circuit diagram"]');
  await expect(diagram.getByText('OG', { exact: true })).toBeVisible();
  await expect(diagram.getByText('BK', { exact: true })).toBeVisible();
  await expect(page.getByText(/feed OG orange,\s+return BK black/)).toBeVisible();
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

test('ten steps back and forth by keyboard, as chance has them', async ({ page }) => {
  await open(page);
  const lengths = ['1100', '1150', '1250', '1300', '1350', '1400'];
  await page.getByText('Roads', { exact: true }).click();
  const length = field(page, 'Deck roads: length');
  const shown = [await length.inputValue(), ...lengths];
  for (const value of lengths) {
    await length.fill(value);
    await length.blur();
  }
  await page.getByText('Roads', { exact: true }).focus();
  let [seed, at] = [7, lengths.length];
  for (let step = 0; step < 10; step++) {
    seed = (seed * 16807) % 2147483647;
    const key = ['Control+z', 'Control+Shift+z', 'Control+z', 'Control+y'][seed % 4] as string;
    await page.keyboard.press(key);
    at = Math.min(Math.max(at + (key === 'Control+z' ? -1 : 1), 0), lengths.length);
    await expect(length, `step ${step}: ${key}`).toHaveValue(shown[at] as string);
  }
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
    await fill(page, { 'Name of the yard': 'Carried', 'Storage roads on the deck': '6' });
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: button }).click();
    const path = await (await download).path();
    await fill(page, { 'Name of the yard': 'Another' });
    await field(page, 'Open a file or picture').setInputFiles({
      name: 'carried',
      mimeType: 'application/octet-stream',
      buffer: await readFile(path)
    });
    await expect(page.getByText('Carried is open, as a yard of its own.')).toBeVisible();
    await expect(toggles(page)).toHaveCount(6 + 1 + 4);
  });
}

test('a picture from a phone has every view, also those that are not on screen', async ({
  page
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page);
  const drawings = page.locator('figure.board svg');
  await expect(drawings).toHaveCount(1);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save an SVG picture' }).click();
  const text = await readFile(await (await download).path(), 'utf8');
  expect(text.match(/<svg/g)).toHaveLength(1 + 3);
  await expect(drawings).toHaveCount(1);
});

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
  await fill(page, { 'Name of the yard': 'Mine once more' });
  for (const tab of [other, page]) {
    await tab.reload();
    await expect(tab.locator('.yard[data-ready="true"]')).toBeVisible();
    await expect(field(tab, 'Name of the yard')).toHaveValue('Mine once more');
  }
  await fill(page, { 'Name of the yard': 'First here' });
  await fill(other, { 'Name of the yard': 'Then there' });
  await expect(other.getByText(/Another tab has changed this yard/)).toBeVisible();
  await other.getByRole('button', { name: 'New yard' }).click();
  await expect(other.getByLabel('Yards on this device').locator('option')).toHaveText([
    'My yard',
    'Then there',
    'First here',
    'Theirs'
  ]);
});

/** Takes the yard from the button that stands beside the store's words. */
async function offered(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save it as a file' }).click();
  return (await download).suggestedFilename();
}

test('where the browser keeps nothing the page works, says so, and offers the file', async ({
  page
}) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('denied', 'SecurityError');
      }
    });
  });
  await open(page);
  await fill(page, { 'Storage roads on the deck': '4' });
  await expect(page.getByText(/keeps nothing for this page/).first()).toBeVisible();
  await expect(toggles(page)).toHaveCount(4 + 1 + 4);
  expect(await offered(page)).toMatch(/\.yard\.json$/);
});

test('where the store is full the page works, says so, and offers the file', async ({ page }) => {
  await open(page);
  await fill(page, { 'Name of the yard': 'Kept' });
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await fill(page, { 'Name of the yard': 'Too much', 'Storage roads on the deck': '4' });
  await expect(page.getByText(/store is full/).first()).toBeVisible();
  await expect(toggles(page)).toHaveCount(4 + 1 + 4);
  expect(await offered(page)).toMatch(/\.yard\.json$/);
  await page.reload();
  await expect(field(page, 'Name of the yard')).toHaveValue('Kept');
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
