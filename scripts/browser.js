import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import process from 'node:process';

/** Debian's Chromium without a window: half the work of one with a window that nobody sees. */
const SHELL = 'chromium-headless-shell';
const names = [
  SHELL,
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome'
];
const usual = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe'
];

/** Browsers which the test runner has downloaded for itself. */
function downloaded() {
  const folder = join(homedir(), '.cache', 'ms-playwright');
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => /^chromium-\d+$/.test(name))
    .flatMap((name) =>
      ['chrome-linux64', 'chrome-linux'].map((sub) => join(folder, name, sub, 'chrome'))
    );
}

/** Path of a Chromium or Chrome on this machine, one without a window before others, or undefined. */
export function findBrowser() {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const onPath = names.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...onPath, ...usual, ...downloaded()].find((path) => existsSync(path));
}

const hasPackages = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');

/** Whether the browser tests have what suits them best on this machine. */
export const hasBrowser = () => {
  const path = findBrowser();
  return path !== undefined && (!hasPackages || path.endsWith(SHELL));
};

const run = (command, args, root) =>
  spawnSync(command, args, { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] }).status === 0;

/**
 * Installs a Chromium: Debian's package where that can be done, else the test runner's own where there
 * is none at all.
 */
export function installBrowser(root) {
  if (hasPackages) {
    process.env.DEBIAN_FRONTEND = 'noninteractive';
    const apt = (...args) => run('apt-get', ['-y', '-qq', ...args], root);
    if (apt('update') && apt('install', '--no-install-recommends', SHELL)) return;
    if (findBrowser() || apt('install', '--no-install-recommends', 'chromium')) return;
  }
  if (!findBrowser()) run('npx', ['playwright', 'install', 'chromium'], root);
}

/** Switches with which Chromium starts: quiet, and without its sandbox where the user is root. */
export const browserSwitches = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync'
];
