import type { Page } from '@playwright/test';
import { samplePaths } from './lessons';
import { asking, guess, openTables, visit } from './step';
import { expect, test } from './test';

/** The lesson with everything done the other way: off for on, west for east, stop for run. */
const otherWay = (code: string): string =>
  code
    .replace(
      /\bdo:\{switch:\{(\w+):!([01])\}\}/g,
      (_, road: string, off: string) => `do:{switch:{${road}:!${1 - Number(off)}}}`
    )
    .replace(/\bdo:\{controller:(-?)(?=[\d.])/g, (_, minus: string) =>
      minus ? 'do:{controller:' : 'do:{controller:-'
    )
    .replace(/\bdo:\{edits:\[\{[^\]]*\}\]\}/g, 'do:{edits:[]}')
    .replace(/\bwould:`(run|stop)`/g, (_, word: string) =>
      word === 'run' ? 'would:`stop`' : 'would:`run`'
    );

/** From now on the page's lessons have other answers; tells how many files were changed. */
async function turnAround(page: Page): Promise<() => number> {
  let changed = 0;
  await page.route('**/_app/immutable/**/*.js', async (route) => {
    const response = await route.fetch();
    const code = await response.text();
    const body = otherWay(code);
    if (body !== code) changed++;
    await route.fulfill({ response, body });
  });
  return () => changed;
}

/** All that a reader can get before the call. */
async function everything(page: Page): Promise<Readonly<Record<string, string>>> {
  await openTables(page);
  const main = page.locator('main');
  const print = async () => {
    await page.emulateMedia({ media: 'print' });
    const text = await main.innerText();
    await page.emulateMedia({ media: 'screen' });
    return text;
  };
  return {
    page: await main.innerHTML(),
    words: await main.innerText(),
    reader: await main.ariaSnapshot(),
    print: await print()
  };
}

/** What is told after a guess at every call. */
async function toldAfter(page: Page): Promise<readonly string[]> {
  const told: string[] = [];
  for (const step of await asking(page)) {
    await guess(step);
    told.push(await step.told.innerText());
  }
  return told;
}

test.use({ contextOptions: { reducedMotion: 'reduce' } });

for (const path of samplePaths) {
  test(`on ${path} two worlds with other answers look alike until the call`, async ({ page }) => {
    await visit(page, path);
    const first = await everything(page);
    const told = await toldAfter(page);
    const changed = await turnAround(page);
    await page.evaluate(() => localStorage.clear());
    await visit(page, path);
    expect(changed(), 'the other world is another one').toBeGreaterThan(0);
    expect(await everything(page)).toEqual(first);
    expect(await toldAfter(page)).not.toEqual(told);
  });
}
