import type { Locator, Page } from '@playwright/test';
import { expect } from './test';
import { slot, SURENESS, type Call, type Step } from './step';

/** More stops than any page has. */
const MOST_STOPS = 400;

const holdsFocus = (target: Locator): Promise<boolean> =>
  target.evaluate((element) => element.contains(document.activeElement));

/** Goes on with the Tab key until the target, or something in it, has the focus. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let stops = 0; stops < MOST_STOPS; stops++) {
    if (await holdsFocus(target)) return;
    await page.keyboard.press('Tab');
  }
  expect(await holdsFocus(target), 'the Tab key reaches it').toBe(true);
}

/** Chooses one option with Tab, Space and the arrows. */
async function pickByKeys(page: Page, group: Locator, option: string): Promise<void> {
  await tabTo(page, group);
  await page.keyboard.press('Space');
  const names = (await group.locator('label').allTextContents()).map((text) => text.trim());
  for (let steps = 0; steps < names.indexOf(option); steps++) {
    await page.keyboard.press('ArrowRight');
  }
  await expect(group.getByRole('radio', { name: option, exact: true })).toBeChecked();
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
