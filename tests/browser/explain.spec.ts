import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { pressByKeys, tabTo } from './keys';
import { expect, test } from './test';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const button = (page: Page, name: string | RegExp): Locator =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const field = (page: Page, name: string): Locator => page.getByLabel(name, { exact: true });
const steps = (page: Page): Locator => page.locator('ol > li > button');

async function open(page: Page): Promise<void> {
  await page.goto('/explain/');
  await expect(page.locator('.explain[data-ready="true"]')).toBeVisible();
}

/** Hands at the keyboard; each press of a button, choice, or field written is one action. */
function hands(page: Page) {
  let actions = 0;
  return {
    actions: () => actions,
    async press(name: string | RegExp) {
      actions++;
      await button(page, name).press('Enter');
    },
    async write(name: string, text: string) {
      actions++;
      await field(page, name).press('Control+a');
      await page.keyboard.insertText(text);
    },
    async choose(name: string, option: string) {
      actions++;
      await field(page, name).selectOption(option);
    },
    async step(number: number) {
      actions++;
      await steps(page)
        .nth(number - 1)
        .press('Enter');
    }
  };
}

test('from the outline to five finished steps by keyboard in under 40 actions; a new tab has all, two tabs lose nothing', async ({
  page
}) => {
  test.slow();
  await open(page);
  const { press, write, choose, step, actions } = hands(page);
  const advice = page.getByRole('region', { name: 'Advice on this step' });

  await tabTo(page, button(page, 'Start from the outline'));
  await press('Start from the outline');
  await expect(steps(page)).toHaveCount(6);
  await expect(page.getByText(/^\d+ to put right$/)).toHaveCount(0);
  await write('Title', 'My yard, told');
  await step(2);
  await press('Delete this step');
  await write('Heading', 'The switch decides');
  await write('Words', 'Simply look: road C is live.');
  await expect(advice).toContainText('“Simply” helps nobody');
  await expect(advice).toContainText('road C is dead here');
  await expect(advice).toContainText('name road C, not lit');
  await write('Words', 'Toggle A is off, toggle B is on. Toggle C is on too: an empty road waits.');
  await press(/^Take toggle A/);
  await choose('Light something', 'road C');
  await press('Move up');
  await press('Move down');
  const panel = page.getByRole('group', { name: 'Panel' });
  await pressByKeys(page, panel.getByRole('switch', { name: /^Road C/ }));
  await expect(page.locator('.keeper')).toContainText('toggle C is on');
  await press('Keep the board as it stands');
  await expect(page.locator('.keeper')).toContainText('The board stands as this step keeps it.');
  await step(3);
  await choose('Call for the reader', 'limit');
  await expect(
    page.getByText('The engine answers: controller: it goes on as before.')
  ).toBeVisible();
  await choose('Call for the reader', 'about');
  await expect(page.getByText('The engine answers: Plover: stays.')).toBeVisible();
  expect(actions() + 1, 'actions, with the toggle').toBeLessThan(40);
  await expect(steps(page)).toHaveCount(5);

  const { violations } = await new AxeBuilder({ page }).setLegacyMode().analyze();
  const bars = violations.filter(({ impact }) => ['serious', 'critical'].includes(impact ?? ''));
  expect(bars.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);

  const again = await page.context().newPage();
  await page.close();
  await open(again);
  await expect(field(again, 'Title')).toHaveValue('My yard, told');
  await expect(steps(again)).toHaveText([/One road/, /The switch decides/, /plug/, /pin/, /wrong/]);
  await steps(again).nth(1).click();
  await expect(field(again, 'Words')).toHaveValue(/an empty road waits/);

  const other = await again.context().newPage();
  await open(other);
  await field(other, 'Title').fill('Told by the other tab');
  await field(again, 'Title').fill('Told by this tab');
  await expect(again.getByText('Another tab has changed this walkthrough')).toBeVisible();
  await button(again, 'Keep both').click();
  await other.reload();
  const kept = field(other, 'Walkthroughs on this device').locator('option');
  await expect(kept).toHaveText(['Told by this tab', 'Told by the other tab']);
});

test('the example opens by one press, plays, and is passed on; on a phone nothing reaches out of the page', async ({
  page
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page);
  await button(page, 'Open the example').click();
  await expect(steps(page)).toHaveCount(8);
  await expect(page.getByText(/^\d+ to put right$/)).toHaveCount(0);
  const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
  expect(await wide()).toBeLessThanOrEqual(390);
  await button(page, 'Play').click();
  await expect(page.getByText('Step 1 of 8')).toBeVisible();
  await button(page, 'Pass on').click();
  const saved = page.waitForEvent('download');
  await button(page, 'Save as a lesson’s Markdown').click();
  expect((await saved).suggestedFilename()).toBe('quillby-quay-explained.md');
  expect(await wide()).toBeLessThanOrEqual(390);
});
