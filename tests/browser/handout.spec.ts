import type { Page } from '@playwright/test';
import { walkFragment, admitWalk, WALK_FORMAT } from '../../src/lib/walk';
import { lessonPaths } from './lessons';
import { expect, test } from './test';

/** Handouts whose calls are the tallest, or of all kinds. With EVERY=1 in the environment all of them. */
const kinds = ['11', '14'];
const samples = [
  ...lessonPaths.filter((path) => process.env.EVERY === '1' || kinds.some((n) => path.includes(n))),
  '/lessons/workshop-whole/'
].map((path) => path.replace('/lessons/', '/handout/'));

/** Room between margins of 10 mm, in CSS pixels: as wide as A4, as high as Letter. Source: ISO 216; ANSI/ASME Y14.1. */
const PAPER = { width: Math.floor((190 / 25.4) * 96), height: Math.floor((259.4 / 25.4) * 96) };
/** 12 pt, px. */
const LEAST_PX = 16;

/** What is wrong with the sheets as printed. */
const faults = (page: Page) =>
  page.evaluate(
    ({ height, least }) => {
      const sheets = document.querySelector('.sheets') as HTMLElement;
      const shown = (element: Element) => element.getBoundingClientRect().width > 0;
      const grey = (colour: string) => {
        const [r, g, b] = colour.match(/[\d.]+/g) ?? [];
        return r === g && g === b;
      };
      const high = [...sheets.querySelectorAll('section')]
        .filter((section) => section.getBoundingClientRect().height > height)
        .map((section) => `higher than a page: ${section.textContent.slice(0, 40)}`);
      const small = [...sheets.querySelectorAll('*')]
        .filter((each) => shown(each) && [...each.childNodes].some((node) => node.nodeType === 3))
        .filter((each) => each.textContent.trim() !== '')
        .map((each) => {
          const svg = each.closest('svg');
          const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
          return {
            words: each.textContent,
            px: parseFloat(getComputedStyle(each).fontSize) * scale
          };
        })
        .filter(({ px }) => px < least - 0.2)
        .map(({ words, px }) => `${px.toFixed(1)} px: ${words.slice(0, 40)}`);
      const coloured = [...sheets.querySelectorAll('*')].flatMap((each) => {
        const { color, fill, stroke } = getComputedStyle(each);
        const bad = [color, fill, stroke].find((ink) => ink.startsWith('rgb') && !grey(ink));
        return bad ? [`${each.tagName} has ${bad}`] : [];
      });
      return [...high, ...small, ...coloured];
    },
    { height: PAPER.height, least: LEAST_PX }
  );

test('on paper every call fits a page, no letter is smaller than 12 pt, no ink is a colour, and no answer stands on the room’s sheets', async ({
  page
}) => {
  await page.setViewportSize(PAPER);
  for (const path of samples) {
    await page.emulateMedia({ media: 'screen', colorScheme: 'dark' });
    await page.goto(path);
    const lead = page.getByRole('button', { name: 'Sheets for the one who leads' });
    await expect(page.locator('.sheets svg').first()).toBeVisible();
    await expect(page.locator('.sheets')).not.toContainText(/Key|Over 70|Many of us/);
    await page.emulateMedia({ media: 'print' });
    expect(await faults(page), path).toEqual([]);
    await page.emulateMedia({ media: 'screen' });
    await expect(async () => {
      await lead.click();
      await expect(page.getByRole('heading', { name: /^Key/ })).toBeVisible({ timeout: 500 });
    }).toPass();
    await expect(page.locator('.sheets')).toContainText(/Under 35 % right/);
    await page.emulateMedia({ media: 'print' });
    expect(await faults(page), `${path}, key`).toEqual([]);
  }
});

test('a walkthrough in a link becomes a handout', async ({ page }) => {
  const walk = admitWalk({
    format: WALK_FORMAT,
    version: 1,
    title: 'The toggle at home',
    yard: { deckRoads: 2 },
    steps: [
      {
        heading: 'Your call',
        words: 'One toggle.',
        scene: { locos: { Plover: 'A' }, controller: '60% east' },
        call: { ask: 'You switch A on. What now?', do: { switch: { A: 'on' } }, about: ['Plover'] }
      }
    ]
  });
  await page.goto(`/handout/${walkFragment(walk)}`);
  await expect(page.getByRole('heading', { name: 'Handout: The toggle at home' })).toBeVisible();
  await expect(page.getByText('You switch A on. What now?')).toBeVisible();
  await page.getByRole('button', { name: 'Sheets for the one who leads' }).click();
  await expect(page.getByText('C, east.')).toBeVisible();
});
