import type { Page } from '@playwright/test';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { allPaths, lessonPaths } from './lessons';
import { build, startServer, type Server } from './server';
import { call, firstRight, guess, SHOW_ALL, stepAt, visit } from './step';
import { expect, test as base } from './test';

/** Where the site lies on the server, without its last stroke; empty for the root. */
interface Place {
  readonly folder: string;
  /** A server of this test's own, which it may end. */
  readonly server: Server;
}

const test = base.extend<Place>({
  folder: ['', { option: true }],
  server: async ({ folder }, use) => {
    const copy = mkdtempSync(join(tmpdir(), 'yard-'));
    cpSync(build, join(copy, folder), { recursive: true });
    const server = await startServer(copy);
    await use(server);
    await server.stop();
    rmSync(copy, { recursive: true });
  },
  baseURL: async ({ server }, use) => {
    await use(server.url);
  },
  serviceWorkers: 'allow'
});

/** Waits until the site has put itself away for later. */
const putAway = (page: Page) =>
  expect
    .poll(() => page.evaluate(() => navigator.serviceWorker.controller?.state), {
      message: 'the site has put itself away',
      timeout: 20_000
    })
    .toBe('activated');

for (const [place, folder] of [
  ['at the root', ''],
  ['in a folder in a folder', '/some/sub']
] as const) {
  test.describe(place, () => {
    test.use({ folder, contextOptions: { reducedMotion: 'reduce' } });

    test('after one visit everything works without the server', async ({ page, server }) => {
      await visit(page, `${folder}/`);
      await putAway(page);
      await server.stop();
      await page.reload();
      await visit(page, `${folder}/`);
      const first = stepAt(page);
      await call(first, { picks: firstRight, sure: 'certain' });
      await expect(first.outcome).toContainText('As you said.');
      await page.getByRole('link', { name: 'More roads, one return' }).click();
      await expect(page.getByRole('heading', { level: 1 })).toHaveText('More roads, one return');
      await guess(stepAt(page));
      for (const path of allPaths) {
        await visit(page, `${folder}${path}`);
        await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Not here');
      }
      const player = `${folder}/explain/player.html`;
      expect(await page.evaluate(async (path) => (await fetch(path)).ok, player)).toBe(true);
    });

    test('an address without its last stroke finds its page, without the server as well', async ({
      page,
      server
    }) => {
      const address = `${folder}${(lessonPaths[0] as string).replace(/\/$/, '')}`;
      const opens = async () => {
        await page.goto(address);
        await expect(page.getByRole('heading', { level: 1 })).toHaveText('Out and home');
        await guess(stepAt(page));
      };
      await opens();
      await visit(page, `${folder}/`);
      await putAway(page);
      await server.stop();
      await opens();
    });

    test('the site asks for nothing outside its folder', async ({ page }) => {
      const asked: string[] = [];
      page.on('request', (request) => asked.push(new URL(request.url()).pathname));
      await visit(page, `${folder}/`);
      await page.getByRole('link', { name: 'Out and home' }).click();
      await expect(page.getByRole('heading', { level: 1 })).toHaveText('Out and home');
      await guess(stepAt(page));
      await page.getByRole('button', { name: SHOW_ALL }).click();
      await page.getByRole('link', { name: 'dropper' }).click();
      await expect(page.getByRole('heading', { level: 1 })).toHaveText('Glossary');
      await expect(page.locator('#dropper')).toBeInViewport();
      await page.getByRole('link', { name: 'Ohmyard' }).click();
      await expect(page).toHaveURL(new RegExp(`${folder}/$`));
      await page.reload();
      await expect(stepAt(page).root).toBeVisible();
      expect(asked.length).toBeGreaterThan(10);
      expect(asked.filter((path) => !path.startsWith(`${folder}/`))).toEqual([]);
    });
  });
}

test.describe('at a wrong address', () => {
  test.use({ allowed: /status of 404|Not found: / });

  test('a reader finds the way home', async ({ page }) => {
    await page.goto('/lessons/99-not-there/');
    await page.getByRole('link', { name: 'To the first page' }).click();
    await expect(stepAt(page).form).toBeVisible();
  });
});

test.describe('at a wrong address', () => {
  test.use({ allowed: /status of 404|Not found: / });

  test('a page says so', async ({ page }) => {
    await page.goto(`/404.html`);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Not here');
  });
});
