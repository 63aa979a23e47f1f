import { screenOf, type Tally } from '../workshop/phone';
import { startWorkshop, type Workshop } from '../workshop/server';
import { build } from './server';
import { expect, test as base } from './test';

const test = base.extend<{ room: Workshop }>({
  room: async ({ browserName }, use) => {
    expect(browserName).toBe('chromium');
    const room = await startWorkshop(build);
    await use(room);
    await room.stop();
  },
  baseURL: async ({ room }, use) => use(room.url)
});

test.use({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  allowed:
    /net::ERR_(CONNECTION_REFUSED|INCOMPLETE_CHUNKED_ENCODING|CONNECTION_RESET)|status of 401/
});

test('a phone joins, votes, changes its mind, is loaded anew and is counted once', async ({
  page,
  room
}) => {
  const screen = await screenOf(room);
  const counts = (tallies: Tally['tallies']) =>
    screen.until<Tally>('tally', (tally) => {
      return Object.entries(tallies).every(([letter, votes]) => tally.tallies[letter] === votes);
    });
  await page.goto('/vote/');
  const status = page.getByRole('status');
  await expect(status).toContainText('the first vote comes soon');
  await screen.set(true);
  const letter = (name: string) => page.getByRole('button', { name, exact: true });
  await letter('B').tap();
  await expect(status).toHaveText('You chose B. You can change it until the vote closes.');
  await counts({ A: 0, B: 1, C: 0 });
  const box = await letter('B').boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0), 'a thumb finds it').toBeGreaterThan(88);

  await page.reload();
  await expect(letter('B')).toHaveAttribute('aria-pressed', 'true');
  await letter('C').focus();
  await page.keyboard.press('Enter');
  await counts({ A: 0, B: 0, C: 1 });
  expect((screen.last('tally') as Tally).voters).toBe(1);

  await screen.set(false);
  await expect(status).toHaveText('Closed. You chose C.');
  await expect(letter('A')).toBeDisabled();
  await screen.set(true, 'call', 2);
  await expect(page.getByText('Second vote')).toBeVisible();
  await expect(letter('C')).toHaveAttribute('aria-pressed', 'false');
  screen.drop();

  await room.stop();
  await expect(status).toHaveText('The room cannot be reached. Trying again …');
  const again = await startWorkshop(build, 'shared', Number(new URL(room.url).port));
  const other = await screenOf(again);
  await other.set(true);
  await expect(status).toHaveText('Choose a letter. Make up your own mind first.');
  await letter('A').tap();
  await other.until<Tally>('tally', ({ tallies }) => tallies.A === 1);
  other.drop();
  await again.stop();
});

test('the screen opens a vote, a phone is counted there, and the key is nowhere to be read', async ({
  page,
  room,
  context
}) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.goto(`/workshop/#room=${room.key}`);
  await expect(page.getByRole('img', { name: /^Code to scan: 127\.0\.0\.1/ })).toBeVisible();
  expect(page.url()).not.toContain(room.key);
  const phone = await context.newPage();
  await phone.goto('/vote/');
  await expect(page.getByText('Here now: 1')).toBeVisible();
  await page.getByRole('button', { name: 'Begin: 45 minutes' }).click();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('PageDown');
  await phone.getByRole('button', { name: 'B', exact: true }).tap();
  await expect(page.locator('.cards')).toContainText('1 card');
  expect(await page.content()).not.toContain(room.key);
  await page.reload();
  await phone.getByRole('button', { name: 'A', exact: true }).tap();
  await expect(phone.getByRole('status')).toContainText('You chose A');
  await expect(page.locator('.cards')).toContainText('1 card');
  await page.keyboard.press('PageDown');
  await expect(phone.getByRole('status')).toHaveText('Closed. You chose A.');
});
