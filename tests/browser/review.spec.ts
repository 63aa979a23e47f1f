import { AxeBuilder } from '@axe-core/playwright';
import type { Download, Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { answer, families, fresh } from '../../src/lib/predict';
import { nextSeed, noProgress, toWake, withTry, type Progress } from '../../src/lib/share';
import { callByKeys, pressByKeys } from './keys';
import { asked, call, guess, stepAt, visit, wrongPicks, type Step } from './step';
import { expect, test } from './test';

const PATH = '/review/';
const KEY = 'ohmyard.progress';
const DAY_MS = 86_400_000;
const results = /\bwent (east|west)\b|\bstayed\b|\bas you said\b|\bran into\b/i;

/** The day on which the tests are run, as the page counts it. */
const today = (page: Page): Promise<number> =>
  page.evaluate((ms) => {
    const now = new Date();
    return Math.floor((now.getTime() - now.getTimezoneOffset() * 60_000) / ms);
  }, DAY_MS);

const lessonIds = [
  '01-out-and-home/1',
  '03-a-switch-is-a-gap/3',
  '04-more-roads/3',
  '07-which-way/3',
  '09-shorts/3'
];

/** A record of five lessons, called so many days ago. */
const taught = (day: number): Progress =>
  lessonIds.reduce(
    (kept, id) => withTry(kept, id, { right: true, sure: 'certain', day }),
    noProgress
  );

const kept = (page: Page, key = KEY): Promise<string | null> =>
  page.evaluate((name) => localStorage.getItem(name), key);

const put = (page: Page, text: string): Promise<void> =>
  page.evaluate(
    ([key, value]) => localStorage.setItem(key as string, value as string),
    [KEY, text]
  );

/** Opens the page with a record on the device. */
async function open(page: Page, ago = 5): Promise<Progress> {
  await visit(page, PATH);
  const progress = taught((await today(page)) - ago);
  await put(page, JSON.stringify(progress));
  await visit(page, PATH);
  await expect(page.getByText('your calls are being made up')).toHaveCount(0);
  return progress;
}

/** What the engine says of the calls that a record brings. */
const answersOf = (progress: Progress) =>
  toWake(progress, families, Infinity).map(({ id }, index) => {
    const family = families.find((each) => each.id === id) as (typeof families)[number];
    const { question, yard, scene } = fresh(family, nextSeed(progress) + index);
    return answer(question, yard, scene).answers;
  });

const callAt = (page: Page, number: number): Step => stepAt(page, `Call ${number} of 3`);

/** Opens the tables of the calls that are open so far. */
async function openTables(page: Page): Promise<void> {
  const closed = page.locator('details:not([open]):visible');
  while ((await closed.count()) > 0) await closed.first().locator('summary').click();
}

async function barriers(page: Page): Promise<readonly string[]> {
  const found: string[] = [];
  for (const paper of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: paper });
    const { violations } = await new AxeBuilder({ page })
      .setLegacyMode()
      .exclude('svg > *')
      .analyze();
    const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    found.push(...grave.map(({ id, nodes }) => `${paper}, ${id}: ${nodes[0]?.target.join(' ')}`));
  }
  return found;
}

const status = (page: Page) => page.locator('.said [role=status]');
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Brings in a file of this text. */
const bringIn = (page: Page, name: string, text: string): Promise<void> =>
  page
    .getByLabel('Bring in a file')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });

const textOf = async (download: Download): Promise<string> =>
  readFileSync(await download.path(), 'utf8');

test.use({ contextOptions: { reducedMotion: 'reduce' } });

test('who has learned nothing yet is sent to the first lesson', async ({ page }) => {
  await visit(page, PATH);
  await expect(page.locator('.visit')).toContainText('nothing to wake up yet');
  await page.locator('.visit').getByRole('link', { name: 'Out and home' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Out and home');
});

test('the yard inspector puts first what the reader called wrongly', async ({ page }) => {
  const path = '/lessons/10-yard-inspector/';
  await visit(page, path);
  await expect(page.getByRole('heading', { name: 'Your own first' })).toHaveCount(0);
  const day = (await today(page)) - 5;
  const wrong = withTry(taught(day), '09-shorts/2', { right: false, sure: 'certain', day });
  await put(page, JSON.stringify(wrong));
  await visit(page, path);
  await expect(page.getByRole('heading', { name: 'Your own first' })).toBeVisible();
  const own = stepAt(page, 'Call 1 of 1');
  await expect(own.root.getByRole('link')).toHaveText('Shorts');
  await expect(page.locator('section.step').first()).toHaveAttribute('id', 'call-1');
  await guess(own);
  await expect(own.told).not.toBeEmpty();
});

test('three calls by keyboard, each open after the one before; nothing is told before', async ({
  page
}) => {
  test.slow();
  const right = answersOf(await open(page));
  expect(right).toHaveLength(3);
  for (const number of [1, 2, 3]) {
    const step = callAt(page, number);
    await expect(step.form).toBeVisible();
    await expect(page.locator('section.step:visible')).toHaveCount(number);
    await openTables(page);
    for (const media of ['screen', 'print'] as const) {
      await page.emulateMedia({ media });
      expect(await step.root.evaluate((element) => element.outerHTML)).not.toMatch(results);
      expect(await step.root.ariaSnapshot()).not.toMatch(results);
    }
    await page.emulateMedia({ media: 'screen' });
    await expect(step.root.locator('.outcome, .trace li, text.number, g.ghost')).toHaveCount(0);
    const picks = right[number - 1] as Readonly<Record<string, string>>;
    expect(Object.keys(await asked(step))).toEqual(Object.keys(picks));
    await callByKeys(page, step, { picks, sure: 'fairly' });
    await expect(step.outcome).toContainText('As you said.');
  }
  await expect(page.getByRole('heading', { name: 'Awake' })).toBeVisible();
  await pressByKeys(page, button(page, 'Three more'));
  await expect(callAt(page, 1).form).toBeVisible();
  const record = JSON.parse((await kept(page)) as string) as Progress;
  const seeds = Object.keys(record.calls).filter((id) => id.startsWith('wake/'));
  expect(seeds.map((id) => id.split('/')[2])).toEqual(['0', '1', '2']);
  expect(record.calls[seeds[0] as string]?.[0]?.day).toBe(await today(page));
});

test('a wrong and certain call brings its card and its trace, and comes back first', async ({
  page
}) => {
  const [right] = answersOf(await open(page));
  const step = callAt(page, 1);
  const from = await step.root.locator('.from').innerText();
  await call(step, { picks: await wrongPicks(step, right ?? {}), sure: 'certain' });
  await expect(step.outcome).toContainText('Not as you said.');
  await expect(step.outcome.getByRole('complementary')).toContainText('Not so:');
  const record = JSON.parse((await kept(page)) as string) as Progress;
  const soon = toWake(record, families, (await today(page)) + 1);
  expect(from).toContain(`From lesson ${soon[0]?.lesson}:`);
});

test('nothing due: the page says when, and makes calls all the same', async ({ page }) => {
  await open(page, 0);
  await expect(page.locator('.visit')).toContainText('Nothing is due today.');
  await expect(page.locator('.visit')).toContainText('The next call is due on');
  await button(page, 'Make calls anyway').click();
  await expect(callAt(page, 1).form).toBeVisible();
});

test('the first page and the lessons say that calls wait', async ({ page }) => {
  await open(page);
  for (const path of ['/', '/lessons/']) {
    await visit(page, path);
    await expect(page.getByText('3 wake-up calls wait for you today:')).toBeVisible();
  }
});

test('how sure against how right: in words, in the picture, in figures', async ({ page }) => {
  await visit(page, PATH);
  const day = await today(page);
  const tries = [
    [true, 'certain', day - 3],
    [false, 'certain', day - 3],
    [true, 'certain', day],
    [true, 'a guess', day]
  ] as const;
  const record = tries.reduce(
    (progress, [right, sure, at]) => withTry(progress, 'home/1', { right, sure, day: at }),
    noProgress
  );
  await put(page, JSON.stringify(record));
  await visit(page, PATH);
  const list = page.locator('section', { hasText: 'How sure, how right' }).locator('li');
  await expect(list).toContainText([
    'When you were certain, you were right 2 of 3 times.',
    'When you were fairly sure, nothing yet.',
    'When you guessed, you were right 1 of 1 time.'
  ]);
  await expect(list.nth(0).locator('rect.all')).toHaveCount(2);
  await expect(list.nth(1).locator('rect')).toHaveCount(0);
  await page.getByText('In figures').click();
  await expect(page.locator('tbody tr').first().locator('td')).toHaveText([
    '1 of 2',
    'none',
    'none'
  ]);
});

test('saved, erased, brought back, erased, brought in: the record is the same', async ({
  page
}) => {
  const record = await open(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    button(page, 'Save as a file').click()
  ]);
  expect(download.suggestedFilename()).toMatch(/^ohmyard-record-\d{4}-\d\d-\d\d\.json$/);
  const text = await textOf(download);
  expect(JSON.parse(text)).toEqual(record);
  await button(page, 'Erase').click();
  await button(page, 'No, leave it').click();
  await expect(status(page)).toHaveText('Nothing was erased.');
  expect(JSON.parse((await kept(page)) as string)).toEqual(record);
  await button(page, 'Erase').click();
  await button(page, 'Yes, erase').click();
  await expect(status(page)).toHaveText('Erased: 5 calls.');
  expect(await kept(page)).toBeNull();
  await button(page, 'Bring it back').click();
  expect(JSON.parse((await kept(page)) as string)).toEqual(record);
  await button(page, 'Erase').click();
  await button(page, 'Yes, erase').click();
  await bringIn(page, 'mine.json', text);
  await expect(page.getByText('‘mine.json’ holds 5 calls. Here there are 0 calls.')).toBeVisible();
  await button(page, 'Add').click();
  await expect(status(page)).toContainText('Added.');
  expect(JSON.parse((await kept(page)) as string)).toEqual(record);
  await expect(page.getByText('you were right 5 of 5 times')).toBeVisible();
});

test('a file put in the place of the record can be taken back', async ({ page }) => {
  const record = await open(page);
  const other = withTry(noProgress, 'home/1', { right: true, sure: 'fairly' });
  await bringIn(page, 'other.json', JSON.stringify(other));
  await button(page, 'Replace').click();
  expect(JSON.parse((await kept(page)) as string)).toEqual(other);
  await button(page, 'Bring it back').click();
  expect(JSON.parse((await kept(page)) as string)).toEqual(record);
});

for (const [what, text] of [
  ['half a file', '{"version":2,"calls":{'],
  ['another kind of file', '{"colour":"green"}'],
  ['a record with a spoilt try', '{"version":2,"calls":{"home/1":[{"right":1,"sure":"fairly"}]}}']
] as const) {
  test(`${what} is refused with its reason, and what is here stays`, async ({ page }) => {
    await open(page);
    const before = await kept(page);
    await bringIn(page, 'bad.json', text);
    await expect(status(page)).toContainText('‘bad.json’ was not brought in.');
    await expect(status(page)).toContainText('progress');
    await expect(status(page)).toContainText('What is here is untouched.');
    await expect(button(page, 'Add')).toHaveCount(0);
    expect(await kept(page)).toBe(before);
  });
}

test('a second spoilt record does not write over the first', async ({ page }) => {
  await visit(page, PATH);
  for (const text of ['first {', 'second {', 'second {']) {
    await put(page, text);
    await visit(page, PATH);
    await expect(page.locator('.notice')).toContainText('could not be read');
  }
  expect(await kept(page, `${KEY}.unreadable`)).toBe('first {');
  expect(await kept(page, `${KEY}.unreadable.2`)).toBe('second {');
  expect(await kept(page, `${KEY}.unreadable.3`)).toBeNull();
});

test('two tabs: neither loses what the other was told', async ({ page, context }) => {
  const [right] = answersOf(await open(page));
  const other = await context.newPage();
  await visit(other, '/');
  await call(stepAt(other), { picks: { Plover: 'east', Heron: 'stays' }, sure: 'fairly' });
  await expect(
    page.getByText('When you were fairly sure, you were right 1 of 1 time.')
  ).toBeVisible();
  await call(callAt(page, 1), { picks: right ?? {}, sure: 'a guess' });
  const record = JSON.parse((await kept(page)) as string) as Progress;
  expect(Object.values(record.calls).flat()).toHaveLength(7);
  await other.close();
});

test('nothing bars the way in either theme, before the calls and after', async ({ page }) => {
  test.slow();
  const answers = answersOf(await open(page));
  await openTables(page);
  expect(await barriers(page)).toEqual([]);
  for (const [index, picks] of answers.entries()) {
    await call(callAt(page, index + 1), { picks, sure: 'certain' });
  }
  await button(page, 'Erase').click();
  await openTables(page);
  expect(await barriers(page)).toEqual([]);
});

test('on no screen does anybody scroll sideways, and buttons are 44 px high', async ({ page }) => {
  await open(page);
  await button(page, 'Erase').click();
  for (const width of [320, 390, 1280]) {
    await page.setViewportSize({ width, height: 800 });
    await expect
      .poll(() => page.evaluate(() => document.documentElement.scrollWidth))
      .toBeLessThanOrEqual(width);
    const low = await page
      .locator('main button:visible, main input[type=file]')
      .evaluateAll((all) => all.filter((each) => each.getBoundingClientRect().height < 44).length);
    expect(low).toBe(0);
  }
});
