import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import process from 'node:process';
import { serve } from './serve.js';

const root = join(import.meta.dirname, '..');
const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');

console.log('Building …');
const built = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'error'], {
  cwd: root,
  stdio: 'inherit'
});
if (built.status !== 0) process.exit(built.status ?? 1);
const address = await serve(join(root, 'build'), Number(process.env.PORT ?? 4173));
console.log(`Ohmyard is at ${address}  (stop it with Ctrl-C)`);
