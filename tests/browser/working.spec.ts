import { pressByKeys } from './keys';
import { stepAt, visit } from './step';
import { expect, test } from './test';

// Nine steps are played at once; a busy machine needs long for it.
test.describe.configure({ timeout: 120_000 });
test.use({ contextOptions: { reducedMotion: 'reduce' } });

test('a working is played by keyboard, step by step and at once, and goes back', async ({
  page
}) => {
  await visit(page, '/lessons/13-the-deck-moves/');
  const { root } = stepAt(page, 'A whole working');
  const button = (name: string) => root.getByRole('button', { name, exact: true });
  const results = root.locator('ol .result');
  await pressByKeys(page, button('Next step'));
  await expect(results).toHaveText([/Clean/]);
  await expect(root.getByRole('status')).toContainText('Step 1: Heron brings a coach in on C.');
  await expect(root.locator('li[aria-current=step]')).toHaveText(/uncoupled/);
  await pressByKeys(page, button('Back'));
  await expect(results).toHaveCount(0);
  await pressByKeys(page, button('Play all'));
  await expect(results).toHaveCount(9, { timeout: 60_000 });
  await expect(root.locator('ol .amiss')).toHaveCount(0);
});
