import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import process from 'node:process';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
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

/** Path of a Chromium or Chrome on this machine, or undefined. */
export function findBrowser() {
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .flatMap((folder) => names.map((name) => join(folder, name)));
  return [...onPath, ...usual, ...downloaded()].find((path) => existsSync(path));
}

const run = (command, args, root) =>
  spawnSync(command, args, { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] }).status === 0;

/** Installs a Chromium: Debian's package where that can be done, else the test runner's own. */
export function installBrowser(root) {
  const asRoot = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (asRoot) {
    process.env.DEBIAN_FRONTEND = 'noninteractive';
    const done =
      run('apt-get', ['update', '-qq'], root) &&
      run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], root);
    if (done) return;
  }
  run('npx', ['playwright', 'install', 'chromium'], root);
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
