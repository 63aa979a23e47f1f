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

/** Every page. */
export const allPaths: readonly string[] = [
  ...callPaths,
  '/lessons/',
  '/review/',
  '/glossary/',
  '/safety/',
  '/about/'
];
