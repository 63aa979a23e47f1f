import type { Page } from '@playwright/test';
import { hiddenIn, outcomes, practice, suspectsOf, testsOf } from '../../src/lib/hunt';
import { yardFile, yardStore } from '../../src/lib/share';
import { sentence } from '../../src/lib/yard';
import { browser, ok } from '../share/shelf';
import { yardOf } from '../yard/build';
import { pickByKeys, pressByKeys, tabTo } from './keys';
import { expect, test } from './test';

const yard = yardOf({ name: 'Small yard', deckRoads: 3, stablingRoads: 1 });
const fault = suspectsOf(yard).find(({ name }) => name === 'wireOff: feed dropper C');

/** What the device keeps of that yard. */
const kept = (): readonly (readonly [string, string])[] => {
  const { memory, one } = browser();
  ok(yardStore.keepNew(one, yardFile({ yard })));
  return [...memory.kept];
};
const DEAD = 'A loco stands still on a road that is on';
const wait = { timeout: 30_000 };

const title = (page: Page) => page.locator('h2[data-test]');

async function open(page: Page): Promise<void> {
  await page.addInitScript((entries) => {
    for (const [key, text] of entries)
      if (!localStorage.getItem(key)) localStorage.setItem(key, text);
  }, kept());
  await page.goto('/yard/hunt/');
  await expect(page.locator('.hunt[data-ready="true"]')).toBeVisible(wait);
}

/** Words of what the test on the page shows of the yard with that fault, by the engine. */
async function answer(page: Page): Promise<string> {
  const id = await title(page).getAttribute('data-test');
  const made = testsOf(yard).find((each) => each.id === id);
  if (!made || !fault) throw new Error(`The page advises '${id}', which the yard does not have.`);
  const shares = outcomes(yard, [made], [fault])[0]?.[0] ?? [];
  return made.outcomes[shares.indexOf(Math.max(...shares))]?.words ?? '';
}

/** Answers what the page asks until it names a fault, at most so many times; how often. */
async function follow(
  page: Page,
  press: (name: RegExp) => Promise<void>,
  most = 12
): Promise<number> {
  for (let tests = 0; tests < most; tests++) {
    const before = await title(page).innerText();
    if ((await title(page).getAttribute('data-test')) === 'found') return tests;
    const words = await answer(page);
    await press(new RegExp(`^${sentence(words).slice(0, -1)}`));
    await expect(title(page)).not.toHaveText(before);
  }
  return most;
}

const outcome = (page: Page, name: RegExp) =>
  page.getByRole('group', { name: 'What it showed' }).getByRole('button', { name });

test('a hunt by the keyboard alone ends at the fault, its repair, its proof and the log', async ({
  page
}) => {
  await open(page);
  await pickByKeys(page, page.getByRole('radiogroup', { name: 'What do you see?' }), DEAD);
  await tabTo(page, page.getByLabel('Road', { exact: true }));
  await page.keyboard.type('C');
  await pressByKeys(page, page.getByRole('button', { name: 'Begin the hunt' }));
  await expect(title(page)).toBeFocused(wait);
  await follow(page, async (name) => {
    await pressByKeys(page, outcome(page, name));
    await expect(title(page)).toBeFocused();
  });
  await expect(title(page)).toHaveText('The feed dropper C is off.');
  await expect(page.getByText('Solder the feed dropper C on again.')).toBeVisible();
  await expect(page.getByText('Then prove it:')).toBeVisible();
  await tabTo(page, page.getByLabel('Your initials'));
  await page.keyboard.type('EM');
  await pressByKeys(page, page.getByRole('button', { name: /write it into the log/ }));
  const log = page.getByRole('region', { name: 'Fault log' });
  await expect(log.getByRole('listitem')).toContainText('The feed dropper C is off.');
  await page.goto('/yard/book/');
  await expect(page.locator('#log')).toContainText('Solder the feed dropper C on again.');
});

test('what is hidden in practice stands nowhere before it is named; the hunt goes on after a reload', async ({
  page
}) => {
  // A bad joint is told without its ohms: its words would never match.
  const seed = [1, 2, 3, 4, 5, 6, 7, 8].find(
    (each) => !hiddenIn(practice(yard, 1, each))[0]?.name.startsWith('highOhms')
  );
  const [hidden] = hiddenIn(practice(yard, 1, seed ?? 0));
  const secret = hidden?.words ?? '';
  expect(secret).toMatch(/\w+ .+\.$/);
  await open(page);
  await page.getByRole('button', { name: 'Practise' }).click();
  await page.getByLabel('Number of the hunt').fill(String(seed));
  await page.getByRole('button', { name: 'Hide a fault' }).click();
  const part = page.locator('#practise');
  await expect(part).toContainText('What is seen:', wait);
  await part.getByRole('button', { name: /^Make this test/ }).click();
  await expect(part).toContainText('1 test made');
  await part.getByRole('button', { name: 'Advise me' }).click();
  await part
    .getByRole('button', { name: /^Make this test/ })
    .first()
    .click();
  await expect(part).toContainText('2 tests made');
  const readings = await part.getByRole('listitem').allInnerTexts();
  await page.reload();
  await expect(part).toContainText('2 tests made', wait);
  expect(await part.getByRole('listitem').allInnerTexts()).toEqual(readings);
  const notes = await page.evaluate(() => JSON.stringify(localStorage));
  for (const text of [await page.content(), await page.locator('body').ariaSnapshot(), notes])
    expect(text).not.toContain(secret);
  expect(notes).not.toContain(hidden?.name);
  await part.getByRole('button', { name: 'Name the fault' }).click();
  await part
    .getByLabel('Where', { exact: true })
    .last()
    .selectOption(hidden?.name.split(': ')[1] ?? '');
  await part.getByLabel('What', { exact: true }).selectOption(hidden?.name ?? '');
  await part.getByRole('button', { name: 'This is it' }).click();
  await expect(part).toContainText('Right and mended:', wait);
  await expect(part).toContainText('You: 2 tests, effort');
});

test.describe('at the layout', () => {
  test.use({ serviceWorkers: 'allow', viewport: { width: 390, height: 844 }, hasTouch: true });

  test('a hunt on a phone goes on without the internet, and after a reload', async ({
    page,
    context
  }) => {
    await open(page);
    await expect
      .poll(() => page.evaluate(() => navigator.serviceWorker.controller?.state), wait)
      .toBe('activated');
    await context.setOffline(true);
    await page.reload();
    await expect(page.locator('.hunt[data-ready="true"]')).toBeVisible(wait);
    await page.getByRole('radio', { name: DEAD }).tap();
    await page.getByLabel('Road', { exact: true }).selectOption('C');
    await page.getByRole('button', { name: 'Begin the hunt' }).tap();
    await expect(title(page)).toHaveText('Test 2', wait);
    const press = (name: RegExp) => outcome(page, name).tap();
    await follow(page, press, 2);
    await expect(title(page)).toHaveText('Test 4');
    await page.reload();
    await expect(title(page)).toHaveText('Test 4', wait);
    await page.getByRole('button', { name: 'Take back the last reading' }).tap();
    await expect(title(page)).toHaveText('Test 3');
    await follow(page, press);
    await expect(title(page)).toHaveText('The feed dropper C is off.');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  });
});
