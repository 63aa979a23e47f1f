import AxeBuilder from '@axe-core/playwright';
import { strFromU8, unzipSync } from 'fflate';
import { readFileSync } from 'node:fs';
import { piecesOf } from './pdf';
import { expect, test } from './test';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

test('the book of the yard on the bench: its sheets, its readings, its tables as files', async ({
  page
}) => {
  await page.goto('/yard/');
  await expect(page.locator('.yard[data-ready="true"]')).toBeVisible();
  await page.getByLabel('Storage roads on the deck', { exact: true }).fill('6');
  await expect(page.getByText('Kept on this device')).toBeVisible();
  await page.getByRole('link', { name: 'Open the wiring book' }).click();
  await expect(page.locator('.book[data-ready="true"]')).toBeVisible();
  for (const name of ['Circuit diagram', 'Wiring schedule', 'Plug table', 'Test card']) {
    await expect(page.getByRole('heading', { name, exact: true })).toBeVisible();
  }
  const card = page.locator('#test-card tbody tr');
  await expect(page.locator('#test-card')).toContainText('single faults', { timeout: 30_000 });
  await expect(page.locator('#operator')).toContainText('until the train is wholly on A');
  await expect(card.filter({ hasText: 'A on' }).first()).toContainText(/\d Ω/);
  await expect(card.filter({ hasText: 'A on, plug out' })).toContainText(/0\.00 V/);
  await expect(page.locator('#front')).toContainText('Mains stays closed');

  const waits = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save all as ZIP' }).click();
  const files = unzipSync(new Uint8Array(readFileSync(await (await waits).path())));
  expect(Object.keys(files)).toContain('plug.csv');
  expect(strFromU8(files['plug.csv'] as Uint8Array)).toContain('feed of road A');

  expect(strFromU8(files['panel-face.svg'] as Uint8Array)).toContain('width="290mm"');
  for (const name of ['panel-back', 'plug', 'sample-road', 'circuit']) {
    expect(strFromU8(files[`${name}.svg`] as Uint8Array), name).toContain('</svg>');
  }

  for (const format of ['A4', 'Letter']) {
    const level = piecesOf(await page.pdf({ format })).filter((piece) => piece.level);
    const like = (mm: number) => level.filter(({ length }) => Math.abs(length - mm) <= 0.2);
    // Two sheets of the panel's face and two of its back: each has both bars.
    expect(like(100), `bars of 100 mm on ${format}`).toHaveLength(4);
    expect(like(4 * 25.4), `bars of 4 in on ${format}`).toHaveLength(4);
  }

  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('button', { name: 'Print the book' })).toBeHidden();
  const { violations } = await new AxeBuilder({ page }).analyze();
  const grave = violations.filter(({ impact }) => ['serious', 'critical'].includes(impact ?? ''));
  expect(grave).toEqual([]);
});

test('at the bench: readings and ticks are kept as they are typed; a changed yard makes the print-out old', async ({
  page
}) => {
  const ready = () =>
    expect(page.locator('.bench[data-ready="true"]')).toBeVisible({ timeout: 30_000 });
  const roads = async (count: string) => {
    await page.goto('/yard/');
    await expect(page.locator('.yard[data-ready="true"]')).toBeVisible();
    await page.getByLabel('Storage roads on the deck', { exact: true }).fill(count);
    await expect(page.getByText('Kept on this device')).toBeVisible();
  };
  await page.setViewportSize({ width: 390, height: 844 });
  await roads('6');
  await page.goto('/yard/book/');
  await page.getByRole('button', { name: 'Mark revision 1 as printed' }).click();
  await expect(page.locator('#front')).toContainText('Nothing has changed since it was printed');

  await page.goto('/yard/bench/');
  await ready();
  await page.getByLabel('Your initials').fill('EM');
  const first = page.getByLabel(/^Line 1:/);
  await page.getByRole('button', { name: 'Line 1 is open', exact: true }).click();
  await page.getByLabel(/^Line 2:/).fill('0.3');
  await page.getByLabel(/^Line 3:/).fill('0,1o');
  await expect(page.getByText(/^3 of \d+ read, 2 not as expected: 2, 3/)).toBeVisible();
  await page.getByText('Every wire, to tick off').click();
  await page.getByLabel('Installed: wire 1', { exact: true }).check();
  await page.getByLabel('Tested: wire 1', { exact: true }).check();
  await page.reload();
  await ready();
  await expect(first).toHaveValue('open');
  await expect(page.getByText('ok, EM', { exact: true })).toBeVisible();
  await expect(page.getByText('off: open expected, EM')).toBeVisible();
  await expect(page.getByLabel(/^Line 3:/)).toHaveValue('0,1o');
  await expect(page.getByText('no reading: type ohms such as 0.13, or open')).toBeVisible();
  await expect(page.locator('#wires')).toContainText(/^Wires 1 of \d+ installed and tested/);
  await page.getByRole('button', { name: 'Begin anew' }).click();
  await expect(first).toHaveValue('');
  await page.getByRole('button', { name: 'Put back what stood before' }).click();
  await expect(first).toHaveValue('open');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);

  await roads('5');
  await page.goto('/yard/book/');
  const front = page.locator('#front');
  await expect(front.getByRole('heading', { name: 'Revision 2' })).toBeVisible();
  await expect(front.getByRole('row', { name: /^Gone \d+ toggle F, rail side/ })).toBeVisible();
  await expect(page.getByText(/revision 2, printed/).first()).toBeVisible();
});
