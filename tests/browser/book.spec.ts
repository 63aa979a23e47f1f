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
