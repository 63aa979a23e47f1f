import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';

/** What the site is made from. */
const sources = ['src', 'content', 'static', 'scripts', 'package-lock.json', 'svelte.config.js'];

/** When a file, or the newest in a folder, was changed last, ms. */
function changedAt(path) {
  const inside = statSync(path).isDirectory()
    ? readdirSync(path, { recursive: true, encoding: 'utf8' })
    : [];
  return Math.max(...['', ...inside].map((name) => statSync(join(path, name)).mtimeMs));
}

/** Whether the site in `root` is built, and nothing it is made from has changed since. */
function isBuilt(root) {
  const page = join(root, 'build', 'index.html');
  if (!existsSync(page)) return false;
  const built = statSync(page).mtimeMs;
  return sources.every((source) => changedAt(join(root, source)) < built);
}

/** Builds the site in `root` where it is not there, or old; ends the program when that fails. */
export function build(root) {
  if (isBuilt(root)) return;
  console.log('Building …');
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const { status } = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'error'], {
    cwd: root,
    stdio: 'inherit'
  });
  if (status !== 0) process.exit(status ?? 1);
}
