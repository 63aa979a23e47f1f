import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..');
const top = readdirSync(root);
const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  readonly scripts: Readonly<Record<string, string>>;
};

/** Made by running something, so not there in a fresh clone. */
const made = ['build', 'test-results', 'playwright-report', '.svelte-kit', 'node_modules'];

/** What stands in backticks, outside and inside fenced blocks of shell commands. */
const quoted = (text: string): readonly string[] =>
  [...text.replace(/^```.*$/gm, '').matchAll(/`([^`\n]+)`/g)].map(([, code]) => code as string);

/** Whether a quoted text looks like a path of this repository: no blanks, no placeholder. */
function isPath(code: string): boolean {
  if (/[\s<>{}()*…$'"]|NN|^https?:|^\//.test(code)) return false;
  const [first = ''] = code.replace(/^\.\//, '').split('/');
  return code.includes('/')
    ? top.includes(first) || /\.(ts|js|md|svelte|json|css)$/.test(code)
    : /^[\w.-]+\.(ts|js|json|md|svelte)$/.test(code);
}

/** Names of all files that people write, without their folders. */
const names = new Set([
  ...top,
  ...['src', 'content', 'scripts', 'tests'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map((at) => basename(at))
  )
]);

/** A path is there from the top; a bare name, such as that of every room's index, anywhere. */
const isThere = (path: string): boolean =>
  path.includes('/') ? existsSync(join(root, path)) : names.has(path);

/** Paths and scripts which a guide names and the repository does not have. */
function missing(text: string): readonly string[] {
  const paths = quoted(text)
    .filter(isPath)
    .filter((path) => !made.includes(path.split('/')[0] as string))
    .filter((path) => !isThere(path));
  const runs = [...text.matchAll(/npm run ([\w:-]+)/g)].map(([, name]) => name as string);
  const own = [...text.matchAll(/npm (start|test)\b/g)].map(([, name]) => name as string);
  return [...paths, ...[...runs, ...own].filter((name) => !(name in scripts))];
}

describe('the guide’s check', () => {
  test('finds paths and scripts that are not there, and lets pass what is', () => {
    const text = [
      'Look at `src/lib/yard/wire.ts` and `src/lib/nowhere`, at `package.json` and `nothing.ts`.',
      'Run `npm run lint`, `npm run fly` and `npm test`. Rails are `feed rail A`.',
      'Write `content/lessons/NN-name.md`; find the site in `build/index.html`.'
    ].join('\n');
    expect(missing(text)).toEqual(['src/lib/nowhere', 'nothing.ts', 'fly']);
  });
});

/** A guide's text; one that is not written yet names nothing. */
const guide = (name: string): string =>
  top.includes(name) ? readFileSync(join(root, name), 'utf8') : '';

test.each(['README.md', 'DEVELOPERS.md'])('%s names only paths and scripts that exist', (name) => {
  expect(missing(guide(name))).toEqual([]);
});

test('DEVELOPERS.md is at most 200 lines', () => {
  expect(guide('DEVELOPERS.md').split('\n').length).toBeLessThanOrEqual(201);
});
