import { screenOf, type Tally } from '../workshop/phone';
import { startWorkshop } from '../workshop/server';
import { build } from './server';
import { roomTest as test } from './room';
import { expect } from './test';

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
