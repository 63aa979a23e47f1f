import { readdirSync } from 'node:fs';
import { join } from 'node:path';

const content = join(import.meta.dirname, '..', '..', 'content', 'lessons');

/** Addresses of the lessons, in their order. */
export const lessonPaths: readonly string[] = readdirSync(content)
  .filter((name) => name.endsWith('.md'))
  .sort()
  .map((name) => `/lessons/${name.replace(/\.md$/, '')}/`);

/** Every page with a call on it. */
export const callPaths: readonly string[] = ['/', ...lessonPaths];

/**
 * Pages with a call whose boards stand for all kinds: plain rows, instruments, sections and pairs,
 * plug, pin and lamps. With EVERY=1 in the environment all pages with a call.
 */
const kinds = ['05', '08', '12'];
export const samplePaths: readonly string[] = callPaths.filter(
  (path) =>
    process.env.EVERY === '1' ||
    path === '/' ||
    kinds.some((number) => path.startsWith(`/lessons/${number}-`))
);

/** Every page. */
export const allPaths: readonly string[] = [
  ...callPaths,
  '/lessons/',
  '/review/',
  '/yard/',
  '/yard/book/',
  '/yard/bench/',
  '/yard/hunt/',
  '/yard/proof/',
  '/explain/',
  '/workshop/',
  '/vote/',
  '/handout/',
  '/handout/04-more-roads/',
  '/handout/workshop-whole/',
  '/explain/play/',
  '/glossary/',
  '/safety/',
  '/about/'
];
