import { defineConfig } from '@playwright/test';
import tests from './playwright.config';

/** Times of the built site in a real browser: tests bound work, this measures it. */
export default defineConfig(tests, {
  testDir: 'tests/bench',
  outputDir: 'test-results/bench',
  workers: 1,
  reporter: 'list',
  use: { serviceWorkers: 'block' }
});
