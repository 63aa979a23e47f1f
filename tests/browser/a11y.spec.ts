import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { allPaths, callPaths, samplePaths } from './lessons';
import { asking, call, firstRight, guess, openTables, stepAt, visit, wrongPicks } from './step';
import { expect, test } from './test';

const NOWHERE = '/there/is/nothing/here/';
const pages = [...allPaths, NOWHERE];
const others = pages.filter((path) => !callPaths.includes(path));

/** Makes a guess at every call of the page, and opens all that can be opened. */
async function openAll(page: Page): Promise<void> {
  for (const step of await asking(page)) await guess(step);
  for (const trace of await page.locator('.trace').all()) {
    await trace.getByRole('button', { name: 'Trace it, step by step' }).click();
  }
  await openTables(page);
}

/** The checker, for pages without frames. */
const checker = (page: Page) =>
  new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });

/** What the checker finds serious or critical on both papers, one line each. */
async function barriers(page: Page): Promise<readonly string[]> {
  const check = async (paper: 'light' | 'dark', axe: AxeBuilder) => {
    await page.emulateMedia({ colorScheme: paper });
    const { violations } = await axe.analyze();
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) =>
        nodes.map(({ target }) => `${paper}, ${id}: ${target.join(' ')}`)
      );
  };
  const light = await check('light', checker(page));
  // The paper changes colours only.
  const dark = await check('dark', checker(page).withRules(['color-contrast']));
  return [...light, ...dark];
}

/** Controls smaller than this, px; a link inside a sentence is as high as its line. */
const small = (controls: Locator, least: { width: number; height: number }) =>
  controls.evaluateAll((elements, { width, height }) => {
    const isInSentence = (element: Element) => {
      const sentence = element.tagName === 'A' ? element.closest('p, dd') : null;
      return sentence !== null && sentence.textContent.trim() !== element.textContent.trim();
    };
    return elements
      .filter((element) => !isInSentence(element))
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.width < width || box.height < height))
      .map(({ element, box }) => {
        const words = element.textContent.trim().slice(0, 30);
        return `${element.tagName} '${words}' ${box.width.toFixed(1)} × ${box.height.toFixed(1)}`;
      });
  }, least);

test.use({
  contextOptions: { reducedMotion: 'reduce' },
  allowed: /status of 404|Not found: \/there\/is\/nothing\/here\//
});

for (const path of samplePaths) {
  test(`nothing bars the way on ${path}, on light and dark paper, before and after its calls`, async ({
    page
  }) => {
    test.slow();
    await visit(page, path);
    await openTables(page);
    expect(await barriers(page), 'before').toEqual([]);
    await openAll(page);
    expect(await barriers(page), 'after').toEqual([]);
  });
}

test(`nothing bars the way on ${others.join(', ')}, on light and dark paper`, async ({ page }) => {
  test.slow();
  for (const path of others) {
    await visit(page, path);
    expect(await barriers(page), path).toEqual([]);
  }
});

test('a wrong and certain call brings a card that bars nothing', async ({ page }) => {
  await visit(page, '/');
  const step = stepAt(page);
  await call(step, { picks: await wrongPicks(step, firstRight), sure: 'certain' });
  await expect(step.outcome.getByRole('complementary')).toBeVisible();
  expect(await barriers(page)).toEqual([]);
});

const widest = (page: Page) =>
  page.evaluate(() => Math.max(document.documentElement.scrollWidth, document.body.scrollWidth));

/** Words of drawings that lie outside the window. */
const cutOff = (page: Page) =>
  page.locator('figure svg text').evaluateAll((texts) =>
    texts
      .map((text) => ({ text, box: text.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.left < 0 || box.right > innerWidth))
      .map(({ text }) => text.textContent.trim())
  );

const screens = [320, 390, 1280].map((width) => ({ width, height: 800 }));

for (const path of samplePaths) {
  test(`on ${path} nobody scrolls sideways, and a finger finds calls and panels 44 px high`, async ({
    page
  }) => {
    const [large, tall] = [
      { width: 44, height: 44 },
      { width: 24, height: 44 }
    ];
    await visit(page, path);
    for (const screen of screens) {
      await page.setViewportSize(screen);
      await expect.poll(() => widest(page), 'before').toBeLessThanOrEqual(screen.width);
      expect(await small(page.locator('form label, form button'), large)).toEqual([]);
    }
    await openAll(page);
    for (const screen of screens) {
      await page.setViewportSize(screen);
      await expect.poll(() => widest(page), 'after').toBeLessThanOrEqual(screen.width);
      await expect.poll(() => cutOff(page)).toEqual([]);
      const controls = '.panel button, .panel input, .trace button, .outcome button';
      expect(await small(page.locator(controls), large)).toEqual([]);
      const lines = 'summary, fieldset label:has([type=radio])';
      expect(await small(page.locator(lines), tall)).toEqual([]);
    }
  });
}

test('on a narrow page with its calls made nothing bars the way', async ({ page }) => {
  test.slow();
  await page.setViewportSize({ width: 320, height: 640 });
  await visit(page, '/lessons/03-a-switch-is-a-gap/');
  await openAll(page);
  expect(await barriers(page)).toEqual([]);
});

/** Steps from a heading to one more than a level below it. */
async function jumpsIn(page: Page): Promise<readonly number[]> {
  const levels = await page
    .locator('h1, h2, h3, h4')
    .evaluateAll((all) => all.map((heading) => Number(heading.tagName.slice(1))));
  return levels.filter((level, index) => level > (levels[index - 1] ?? 0) + 1);
}

test('every page has one title of its own, one main part, headings in order, no control under 24 px and no sideways scroll', async ({
  page
}) => {
  test.slow();
  const titles: string[] = [];
  for (const path of pages) {
    await visit(page, path);
    titles.push(await page.title());
    await expect(page.getByRole('main')).toHaveCount(1);
    await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
    expect(await jumpsIn(page), path).toEqual([]);
    const controls = 'a:not(.skip), button, select, summary, label, input:not(label input)';
    for (const screen of screens) {
      await page.setViewportSize(screen);
      expect(await small(page.locator(controls), { width: 24, height: 24 }), path).toEqual([]);
      await expect.poll(() => widest(page), path).toBeLessThanOrEqual(screen.width);
    }
  }
  expect(new Set(titles).size).toBe(pages.length);
});

test('the first Tab key offers to skip to the page', async ({ page }) => {
  await visit(page, '/');
  await page.keyboard.press('Tab');
  const skip = page.getByRole('link', { name: 'Skip to the page' });
  await expect(skip).toBeFocused();
  await expect(skip).toBeInViewport({ ratio: 1 });
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await expect(page.locator('main :focus')).toHaveCount(1);
});
