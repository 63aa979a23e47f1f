import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from '@playwright/test';
import {
  admitWalk,
  answerOf,
  filledPage,
  readWalk,
  walkFragment,
  type WalkCall,
  type Walkthrough
} from '../../src/lib/walk';
import { vectors, withValue } from '../walk/hostile';
import { sampleFile, sampleWalk } from '../walk/sample';
import { tabTo } from './keys';
import { build } from './server';
import { call, stepAt, visit, type Call } from './step';
import { expect, test } from './test';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const MOST_BYTES = 600_000;
const play = (walk: Walkthrough): string => `/explain/play/${walkFragment(walk)}`;
const right: Call = { picks: { Plover: 'stays', Heron: 'east' }, sure: 'certain' };
const heading = (page: Page) => page.locator('.walk h2');
const changed = (page: Page) => page.locator('.changed');

/** Plays the sample by keys: a call waits, is made rightly, the board is tried and put back. */
async function playSample(page: Page): Promise<void> {
  await expect(heading(page)).toHaveText('One road is one loop');
  await page.keyboard.press('ArrowRight');
  await expect(heading(page)).toHaveText('One toggle each');
  await expect(heading(page)).toBeFocused();
  await expect(changed(page)).toHaveText('Changed: toggle A is off.');
  const step = stepAt(page);
  await page.keyboard.press('PageDown');
  await expect(page.getByText('Make your call first.')).toBeVisible();
  await expect(heading(page)).toHaveText('One toggle each');
  await expect(step.told).toHaveCount(0);
  await call(step, right);
  await expect(step.outcome).toContainText('As you said.');
  await expect(step.outcome).toContainText('Heron went east');
  await page.keyboard.press('r');
  await expect(step.status).toHaveText('Back at the start.');
  await expect(step.root.getByRole('switch', { name: /^Road B / })).not.toBeChecked();
  await page.keyboard.press('PageDown');
  await expect(heading(page)).toHaveText('The deck slides to R');
  await page.keyboard.press('PageUp');
  await expect(heading(page)).toHaveText('One toggle each');
}

/** A page opened from the disk in a fresh browser without network, and what it complained of or asked for. */
async function fromDisk(browser: Browser, file: string) {
  const context = await browser.newContext({ offline: true, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const troubles: string[] = [];
  const address = pathToFileURL(file).href;
  page.on('console', (message) => troubles.push(message.text()));
  page.on('pageerror', (error) => troubles.push(error.message));
  page.on('request', (request) => {
    if (!request.url().startsWith('data:') && request.url() !== address) {
      troubles.push(request.url());
    }
  });
  await page.goto(address);
  return { page, troubles, close: () => context.close() };
}

test('a walkthrough opened by its link is played by keys, and handed over as one file that plays alone', async ({
  page,
  browser
}, info) => {
  await visit(page, play(sampleWalk));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(sampleFile.title);
  await expect(page).toHaveURL(/\/explain\/play\/$/);
  await playSample(page);
  expect(await page.evaluate(() => localStorage.getItem('ohmyard.progress'))).toBeNull();
  const button = page.getByRole('button', { name: 'Save as one HTML file' });
  await tabTo(page, button);
  const waiting = page.waitForEvent('download');
  await page.keyboard.press('Enter');
  const download = await waiting;
  expect(download.suggestedFilename()).toBe('how-quillby-quay-is-wired.html');
  await expect(page.getByText(/^One HTML file is saved: \d+ kB\./)).toBeVisible();

  const file = join(info.outputDir, 'single.html');
  await download.saveAs(file);
  const { length } = readFileSync(file);
  console.log(`One HTML file: ${length} bytes.`);
  expect(length).toBeLessThan(MOST_BYTES);
  const alone = await fromDisk(browser, file);
  await playSample(alone.page);
  await expect(alone.page).toHaveTitle(sampleFile.title);
  expect(alone.troubles).toEqual([]);
  await alone.close();

  await page.getByLabel('Open a file').setInputFiles(file);
  await expect(heading(page)).toHaveText('One road is one loop');
  await page.getByLabel('Open a link').fill('#yard=AQAA');
  await page.getByRole('button', { name: 'Open it' }).click();
  await expect(page.getByText('This is a yard. Open it on the page ‘My yard’.')).toBeVisible();
});

/** The engine's answer to a step's call, made as a call. */
function rightly({ yard, steps }: Walkthrough, index: number): Call {
  const { scene, call: asked } = steps[index] as Walkthrough['steps'][number];
  const given = answerOf(yard, scene, asked as WalkCall);
  return { picks: 'answers' in given ? given.answers : {}, sure: 'certain' };
}

test('the example of the demo yard, saved as one file, plays from the disk and answers a call', async ({
  browser
}, info) => {
  const example = readWalk(readFileSync('static/examples/quillby-quay.walk.json', 'utf8'));
  const index = example.steps.findIndex((step) => step.call);
  const file = info.outputPath('example.html');
  writeFileSync(
    file,
    filledPage(readFileSync(join(build, 'explain/player.html'), 'utf8'), example)
  );
  expect(readFileSync(file).length).toBeLessThan(MOST_BYTES);
  const { page, troubles, close } = await fromDisk(browser, file);
  for (const { heading: words } of example.steps.slice(0, index)) {
    await expect(heading(page)).toHaveText(words);
    await page.keyboard.press('PageDown');
  }
  await call(stepAt(page), rightly(example, index));
  await expect(stepAt(page).outcome).toContainText('As you said.');
  expect(troubles).toEqual([]);
  await close();
});

test('on paper each step has one picture, and the answers a page of their own at the end', async ({
  page
}) => {
  await visit(page, play(sampleWalk));
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  const paper = page.locator('article');
  const steps = paper.locator('section:not(.answers)');
  await expect(steps).toHaveCount(3);
  for (const step of await steps.all()) await expect(step.locator('svg[role=img]')).toHaveCount(1);
  await expect(steps.nth(1)).toContainText('☐ stays');
  expect(await steps.allInnerTexts()).not.toContainEqual(expect.stringMatching(/Heron went/));
  await expect(paper.locator('.answers')).toContainText('Plover stayed and Heron went east.');
  await expect(page.locator('.walk')).toBeHidden();
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
  // A4 is 210 mm × 297 mm. Source: ISO 216. A point is 1/72 in.
  for (const [, width, height] of boxes) {
    expect(Number(width)).toBeCloseTo((210 / 25.4) * 72, 0);
    expect(Number(height)).toBeCloseTo((297 / 25.4) * 72, 0);
  }
  expect(boxes.length).toBeGreaterThan(1);
});

/** Six steps with hostile texts in every field. */
const hostileWalk = (): Walkthrough => {
  const [step] = sampleFile.steps.slice(1);
  const steps = Array.from({ length: 6 }, (_, index) => {
    const some = vectors.slice(index * 7, index * 7 + 7);
    return {
      ...step,
      heading: some[0]?.slice(0, 60),
      words: `${some.join('\n\n')}`,
      call: { ...step?.call, ask: some[1] }
    };
  });
  const yard = { ...sampleFile.yard, name: vectors[2], names: { A: '<img src=x onerror=x>' } };
  return admitWalk({ ...withValue(['title'], vectors[0]), yard, steps });
};

/** What the page holds that no walkthrough may bring into it. */
const grown = (page: Page) =>
  page.evaluate(() => {
    const acting = 'iframe, object, embed, base, math, link[rel=stylesheet][href*=evil], img';
    const inWalk = [...document.querySelectorAll('.walk *')];
    const handlers = inWalk.flatMap((element) =>
      [...element.attributes]
        .filter(({ name }) => /^(on|srcdoc|formaction|action)/.test(name))
        .map(({ name }) => `${element.tagName} ${name}`)
    );
    const links = [...document.querySelectorAll('.walk [href], .walk [src]')];
    const scripts = document.querySelectorAll('.walk script, .walk style, h1 *, h2 *').length;
    const acted = document.querySelectorAll(acting).length;
    return { handlers, scripts, links: links.length, acted, hit: 'hit' in globalThis };
  });
const nothing = { handlers: [], scripts: 0, links: 0, acted: 0, hit: false };

/** Goes through all steps and looks at each. */
async function mustBeInert(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(vectors[0]);
  for (let step = 1; step <= 6; step++) {
    await expect(page.getByText(`Step ${step} of 6`)).toBeVisible();
    expect(await grown(page)).toEqual(nothing);
    if (step === 6) break;
    await page.keyboard.press('PageDown');
    await page.keyboard.press('PageDown');
  }
  await expect(page.locator('.walk h2').getByText('expression(hit())')).toBeVisible();
}

test('hostile texts arrive as words: no element, handler, script or request comes of them', async ({
  page,
  browser
}, info) => {
  const walk = hostileWalk();
  await visit(page, play(walk));
  await mustBeInert(page);
  const file = info.outputPath('hostile.html');
  writeFileSync(file, filledPage(readFileSync(join(build, 'explain/player.html'), 'utf8'), walk));
  const alone = await fromDisk(browser, file);
  await mustBeInert(alone.page);
  expect(alone.troubles).toEqual([]);
  await alone.close();
});
