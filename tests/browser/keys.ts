import type { Locator, Page } from '@playwright/test';
import { expect } from './test';
import { slot, SURENESS, type Call, type Step } from './step';

/** More stops than any page has. */
const MOST_STOPS = 400;

/** Which way the focus has to go to reach the target. */
const wayTo = (target: Locator): Promise<'here' | 'Tab' | 'Shift+Tab'> =>
  target.evaluate((element) => {
    const now = document.activeElement ?? document.body;
    if (element.contains(now)) return 'here';
    const behind = now.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING;
    return now !== document.body && behind ? 'Shift+Tab' : 'Tab';
  });

/** Goes on with the Tab key, or back with Shift, until the target or something in it has the focus. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  let way = await wayTo(target);
  for (let stops = 0; way !== 'here' && stops < MOST_STOPS; stops++) {
    await page.keyboard.press(way);
    way = await wayTo(target);
  }
  expect(way, 'the Tab key reaches it').toBe('here');
}

/** Chooses one option with Tab, Space and the arrows. */
export async function pickByKeys(page: Page, group: Locator, option: string): Promise<void> {
  const wanted = group.getByRole('radio', { name: option, exact: true });
  await tabTo(page, group);
  await page.keyboard.press('Space');
  const count = await group.getByRole('radio').count();
  for (let steps = 0; !(await wanted.isChecked()) && steps < count; steps++) {
    await page.keyboard.press('ArrowRight');
  }
  await expect(wanted).toBeChecked();
}

/** Makes a call with the keyboard alone. */
export async function callByKeys(page: Page, step: Step, { picks, sure }: Call): Promise<void> {
  for (const [name, option] of Object.entries(picks)) {
    await pickByKeys(page, slot(step, name), option);
  }
  await pickByKeys(page, slot(step, SURENESS), sure);
  await tabTo(page, step.button);
  await page.keyboard.press('Enter');
  await expect(step.told).toBeVisible();
}

/** Presses a button reached with the Tab key. */
export async function pressByKeys(page: Page, target: Locator): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press('Enter');
}
