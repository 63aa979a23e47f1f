import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { findBrowser, hasBrowser, installBrowser } from './browser.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const stamp = join(root, 'node_modules', '.ohmyard-stamp');
const [LEAST_MAJOR, LEAST_MINOR] = [20, 20];

function mustHaveNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > LEAST_MAJOR || (major === LEAST_MAJOR && minor >= LEAST_MINOR)) return;
  console.error(
    `Ohmyard needs Node ${LEAST_MAJOR}.${LEAST_MINOR} or newer; this is ${process.versions.node}. Install a newer Node and try again.`
  );
  process.exit(1);
}

/** Installs the packages of the lock file once; a stamp of that file remembers it. */
function installPackages() {
  const lock = readFileSync(join(root, 'package-lock.json'));
  const mark = createHash('sha256').update(lock).digest('hex');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === mark) return;
  console.log('Installing packages …');
  const done = spawnSync('npm', ['ci', '--include=dev', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32'
  });
  if (done.status !== 0) {
    console.error(
      'The packages could not be installed: see above. Check the network and try again.'
    );
    process.exit(1);
  }
  mkdirSync(join(root, 'node_modules'), { recursive: true });
  writeFileSync(stamp, mark);
}

mustHaveNode();
installPackages();
if (process.argv.includes('--browser') && !hasBrowser()) {
  console.log('Installing a Chromium for the browser tests …');
  installBrowser(root);
  if (!findBrowser()) {
    console.error('No Chromium could be installed. Install Chromium or Chrome and try again.');
    process.exit(1);
  }
}
