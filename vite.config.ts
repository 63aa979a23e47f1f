import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';
import { lessons } from './scripts/lessons.ts';
import { walkPlayer } from './scripts/player.ts';

export default defineConfig({
  plugins: [lessons(), walkPlayer(), sveltekit()],
  test: {
    /** `npm run prove` tries for hours what the tests try in part. */
    include: [process.env.LONG ? 'tests/**/*.long.ts' : 'tests/**/*.test.ts'],
    /** Room for a busy machine: the suites bound work, not time. */
    testTimeout: 60_000,
    /** Files share what they import: none changes it, and reading it anew for each takes minutes. */
    isolate: false,
    maxWorkers: 2,
    expect: { requireAssertions: true }
  }
});
