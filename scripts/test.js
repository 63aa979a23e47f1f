import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';

const root = join(import.meta.dirname, '..');
const results = join(root, 'test-results');
const bin = (name) => join(root, 'node_modules', '.bin', name);

/** Runs one step. Steps that run side by side keep their words until they end. */
async function run([title, command, args], beside = false) {
  const begun = Date.now();
  if (!beside) console.log(`\n== ${title}`);
  const step = spawn(command, args, { cwd: root, stdio: beside ? 'pipe' : 'inherit' });
  let words = '';
  for (const stream of [step.stdout, step.stderr]) stream?.on('data', (text) => (words += text));
  const [status] = await once(step, 'close');
  if (words) process.stdout.write(words);
  console.log(
    `== ${title}: ${status === 0 ? 'fine' : 'FAILED'}, ${((Date.now() - begun) / 1000).toFixed(1)} s`
  );
  return status === 0;
}

/** Counts of a runner's JSON report; a runner that left none counts as one failure. */
function counts(file, read) {
  try {
    return read(JSON.parse(readFileSync(join(results, file), 'utf8')));
  } catch {
    return { passed: 0, failed: 1 };
  }
}

rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

const routes = ['routes', bin('svelte-kit'), ['sync']];
const checks = [
  ['types', bin('svelte-check'), ['--tsconfig', './tsconfig.json', '--fail-on-warnings']],
  ['lint', bin('eslint'), ['.', '--max-warnings', '0']],
  ['format', bin('prettier'), ['--check', '--log-level', 'warn', '.']],
  ['unused code', bin('knip'), []]
];
const tests = [
  ['build', bin('vite'), ['build', '--logLevel', 'error']],
  [
    'unit and published-value tests',
    bin('vitest'),
    ['run', '--reporter=default', '--reporter=json', '--outputFile.json=test-results/unit.json']
  ],
  ['browser tests', bin('playwright'), ['test']]
];

const failed = [];
const note = async (step, beside) => (await run(step, beside)) || failed.push(step[0]);
await note(routes);
await Promise.all(checks.map((step) => note(step, true)));
for (const step of tests) await note(step);

const unit = counts('unit.json', (report) => ({
  passed: report.numPassedTests,
  failed: report.numFailedTests
}));
const browser = counts('browser.json', ({ stats }) => ({
  passed: stats.expected,
  failed: stats.unexpected + stats.flaky + stats.skipped
}));
const sum = { passed: unit.passed + browser.passed, failed: unit.failed + browser.failed };
if (failed.length > 0) console.log(`\nFailed: ${failed.join(', ')}`);
console.log(`\n${sum.passed} passed, ${sum.failed} failed`);
process.exit(failed.length > 0 || sum.failed > 0 ? 1 : 0);
