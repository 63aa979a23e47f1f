import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { optionsOf, plans, rightOf, type Round } from '../../src/lib/walk';
import { planned, rounds } from '../walk/planned';
import { join, type Seen } from '../workshop/phone';
import { roomTest } from './room';
import { expect, test } from './test';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const calls = (plans[0]?.calls ?? planned).map((id) => rounds.get(id) as Round);

const stage = (page: Page) => page.locator('.projected').getAttribute('data-stage');
const press = async (page: Page, ...keys: readonly string[]) => {
  for (const key of keys) await page.keyboard.press(key);
};

/** Everything the page tells now, in text, attributes and to readers, without the question and its options. */
const tells = (page: Page) =>
  page.locator('.projected').evaluate((element) => {
    const copy = element.cloneNode(true) as Element;
    for (const given of copy.querySelectorAll('.ask, ul')) given.remove();
    return copy.outerHTML.replace(/<!--.*?-->/g, '');
  });

/** What readers hear, without the question. */
async function readersHear(page: Page): Promise<string> {
  const asks = await page.locator('.ask').allInnerTexts();
  return (await page.locator('.projected').ariaSnapshot()).replace(asks[0] ?? '', '');
}

/** The options' marks, letters and words left out: equal for all where none is singled out. */
const marks = (page: Page) =>
  page
    .locator('.projected ul li:has(strong)')
    .evaluateAll((all) => all.map((each) => each.outerHTML.replace(/>[^<]+</g, '><')));

/** Types so many cards for each option, digits after its letter. */
const vote = (page: Page, tally: readonly number[]) =>
  press(page, ...tally.flatMap((cards, option) => ['abcd'[option] as string, ...`${cards}`]));

/** A first vote of twenty cards, so many of them right, the rest shared between two others. */
const tallyOf = (round: Round, right: number): readonly number[] => {
  const at = rightOf(round);
  const wrong = optionsOf(round.question).map((_, option) => option !== at);
  const [one, two] = wrong.flatMap((is, option) => (is ? [option] : []));
  return wrong.map((_, option) => {
    if (option === at) return right;
    if (option === one) return Math.ceil((20 - right) / 2);
    return option === two ? Math.floor((20 - right) / 2) : 0;
  });
};

const barriers = async (page: Page) => {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join('; ')}`);
};

/** Goes on until the answer, and keeps what the page told at each stage before. */
async function toAnswer(page: Page, told: string[], last: 'throw' | 'check'): Promise<void> {
  told.push(await tells(page));
  expect(new Set(await marks(page)).size, 'no option stands out').toBeLessThan(2);
  if ((await stage(page)) === last) {
    told.push(await readersHear(page));
    return;
  }
  await press(page, 'PageDown');
  await toAnswer(page, told, last);
}

/** What was told before must not hold what is told now. */
async function wasSecret(page: Page, told: readonly string[]): Promise<void> {
  const answer = (await page.locator('.answer').innerText()).replace(/^[A-D]\s*/, '').trim();
  const cause = (await page.locator('.told p').nth(1).innerText()).trim();
  expect(answer.length).toBeGreaterThan(2);
  for (const before of told) {
    expect(before).not.toContain(answer);
    if (cause !== '') expect(before).not.toContain(cause);
    expect(before).not.toMatch(/\bwent (east|west)\b|\bstayed\b|✓|class="(share|answer|told)/);
  }
}

test('six calls with a clicker and a few keys, the answer nowhere before its time, a reload in between', async ({
  page
}) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.goto('/workshop/');
  await expect(page.locator('h1[data-ready=true]')).toBeVisible();
  await page.getByRole('button', { name: 'Begin: 45 minutes' }).focus();
  await press(page, 'Enter');
  const cards = page.locator('.cards');
  const word = cards.locator('em');

  for (const [index, round] of calls.entries()) {
    await expect(page.getByRole('status')).toHaveText(`Round ${index + 1} of 6: The yard`);
    const told = [await tells(page)];
    await press(page, 'PageDown', 'PageDown');
    expect(await stage(page)).toBe('first');
    if (index === 0) expect(await barriers(page)).toEqual([]);

    const right = [4, 18, 10][index % 3] as number;
    await vote(page, tallyOf(round, right));
    await expect(cards).toContainText('20 cards');
    await expect(word).toHaveText(['hint', 'go on', 'discuss'][index % 3] as string);
    told.push(await tells(page));

    await press(page, 'PageDown');
    expect(await stage(page)).toBe(index % 3 === 1 ? 'throw' : 'talk');
    await expect(page.locator('p.tip')).toHaveCount(index % 3 === 0 ? 1 : 0);
    if (index === 2) {
      await press(page, 'PageDown', 'a', 'b', 'b');
      await page.reload();
      await expect(cards).toHaveText('3 cards, last B');
      await press(page, 'u');
      await expect(cards).toHaveText('2 cards, last B');
      await press(page, 'B', 'Shift+B');
      await expect(cards).toHaveText('2 cards, last B');
    }
    if (index === 3) {
      await press(page, '.');
      await expect(page.locator('.projected')).toHaveText('');
      await press(page, 'PageDown');
      expect(await stage(page), 'the first key only brings the picture back').toBe('talk');
    }
    await toAnswer(page, told, 'throw');

    await press(page, 't');
    expect(await stage(page)).toBe('seen');
    await press(page, 'PageDown');
    await expect(page.locator('.answer')).toBeVisible();
    await expect(page.locator('table').getByText('20')).toHaveCount(0);
    await expect(page.locator('tbody tr').nth(rightOf(round))).toContainText(`✓ ${right}`);
    await wasSecret(page, told);
    if (index === 2) expect(await barriers(page)).toEqual([]);

    await press(page, 'PageDown');
    const twins: string[] = [];
    await toAnswer(page, twins, 'check');
    await press(page, 'PageDown');
    await wasSecret(page, twins);
    await press(page, 'PageDown');
  }

  await expect(page.getByRole('heading', { name: 'Rules to take home' })).toBeVisible();
  await press(page, '?');
  await expect(page.getByRole('heading', { name: 'Keys' })).toBeVisible();
  await press(page, 's');
  await expect(page.getByText('Last row, at most')).toBeVisible();
  expect(await barriers(page)).toEqual([]);
  await press(page, 's', 'q');
  await expect(page.getByRole('button', { name: 'Go on where you were' })).toBeVisible();
});

roomTest(
  'phones and cards are counted together, and a reload loses none',
  async ({ page, room }) => {
    await page.goto(`/workshop/#room=${room.key}`);
    await expect(page.getByRole('img', { name: /^Code to scan: 127/ })).toBeVisible();
    expect(page.url()).not.toContain(room.key);
    const phone = await join(room);
    await page.getByRole('button', { name: 'Begin: 30 minutes' }).press('Enter');
    await press(page, 'PageDown', 'PageDown');
    const cards = page.locator('.cards');
    await expect(cards).toHaveText('0 votes');
    await phone.until<Seen>('round', ({ open }) => open);
    expect((await phone.vote('C')).status).toBeLessThan(300);
    await expect(cards).toHaveText('1 vote');
    await press(page, 'a', '2');
    await expect(cards).toHaveText('3 votes, last A');
    await page.reload();
    await expect(cards).toHaveText('3 votes, last A');
    await press(page, 'PageDown');
    await phone.until<Seen>('round', ({ open }) => !open);
    phone.drop();
  }
);
