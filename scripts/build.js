import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import process from 'node:process';

/** Builds the site in `root`; ends the program when that fails. */
export function build(root) {
  console.log('Building …');
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const { status } = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'error'], {
    cwd: root,
    stdio: 'inherit'
  });
  if (status !== 0) process.exit(status ?? 1);
}
