import { defineConfig } from '@playwright/test';
import { browserSwitches, findBrowser } from './scripts/browser.js';

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: 'test-results/browser',
  globalSetup: './tests/browser/setup.ts',
  workers: 2,
  fullyParallel: true,
  timeout: 120_000,
  expect: { timeout: 20_000 },
  forbidOnly: true,
  reporter: [['list'], ['json', { outputFile: 'test-results/browser.json' }]],
  use: {
    browserName: 'chromium',
    launchOptions: { executablePath: findBrowser(), args: browserSwitches },
    actionTimeout: 30_000,
    viewport: { width: 1280, height: 800 }
  }
});
