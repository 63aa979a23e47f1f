import { defineConfig } from '@playwright/test';
import { browserSwitches, findBrowser } from '../../scripts/browser.js';

/** Times of the built site in a real browser; tests bound work, this measures it. */
export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results/bench',
  globalSetup: '../browser/setup.ts',
  workers: 1,
  timeout: 300_000,
  reporter: 'list',
  use: {
    browserName: 'chromium',
    launchOptions: { executablePath: findBrowser(), args: browserSwitches },
    viewport: { width: 1280, height: 800 },
    serviceWorkers: 'block'
  }
});
