import type { Locator, Page } from '@playwright/test';
import { expect } from './test';

/** One step of a lesson as a hand finds it: the call, the board, and what stands beside it. */
export interface Step {
  readonly root: Locator;
  readonly form: Locator;
  /** The one button that makes the call. */
  readonly button: Locator;
  readonly board: Locator;
  readonly status: Locator;
  readonly panel: Locator;
  readonly told: Locator;
  readonly outcome: Locator;
}

/** A call: an option for each thing asked, and how sure. */
export interface Call {
  readonly picks: Readonly<Record<string, string>>;
  readonly sure: 'a guess' | 'fairly' | 'certain';
}

/** The button that opens steps before the calls ahead of them are made. */
export const SHOW_ALL = 'Show every step now';
export const SURENESS = 'How sure are you?';

const stepOf = (root: Locator): Step => ({
  root,
  form: root.locator('form'),
  button: root.locator('form button[type=submit]'),
  board: root.locator('figure.board'),
  status: root.locator('.extras > [role=status]'),
  panel: root.getByRole('group', { name: 'Panel' }),
  told: root.locator('.outcome strong'),
  outcome: root.locator('.outcome')
});

/** Opens a page and waits until its letters are there and its boards live. */
export async function visit(page: Page, path: string): Promise<void> {
  await page.goto(path);
  await expect(page.locator('footer')).toBeVisible();
  await expect(page.locator('.play:not([data-ready="true"])')).toHaveCount(0);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  const everything = page.getByRole('button', { name: SHOW_ALL });
  if (await everything.isVisible()) await everything.click();
}

/** The step under a heading; the first one where none is given. */
export const stepAt = (page: Page, heading?: string): Step => {
  const steps = page.locator('section.step');
  return stepOf(
    heading === undefined
      ? steps.first()
      : steps.filter({ has: page.getByRole('heading', { name: heading, exact: true }) })
  );
};

/** Every step of the page that asks for a call. */
export const asking = async (page: Page): Promise<readonly Step[]> => {
  const headings = await page.locator('section.step:has(form) .words h2').allTextContents();
  return headings.map((heading) => stepAt(page, heading));
};

/** Opens every table 'In words', so that nothing is out of sight. */
export async function openTables(page: Page): Promise<void> {
  for (const table of await page.locator('details').all()) {
    if (!(await table.evaluate((element) => element.hasAttribute('open')))) {
      await table.locator('summary').click();
    }
  }
  await expect(page.locator('details:not([open])')).toHaveCount(0);
}

/** The options of one thing asked. */
export const slot = ({ root }: Step, name: string): Locator =>
  root.getByRole('radiogroup', { name, exact: true });

/** The things asked with their options, in their order; without the question how sure one is. */
export async function asked({ form }: Step): Promise<Readonly<Record<string, readonly string[]>>> {
  const groups = await form.locator('[role=radiogroup]').evaluateAll((all) =>
    all.map((group): [string, string[]] => {
      const [name, ...options] = [...group.querySelectorAll('.name, label')].map((each) =>
        each.textContent.trim()
      );
      return [name as string, options];
    })
  );
  return Object.fromEntries(groups.filter(([name]) => name !== SURENESS));
}

const pick = (step: Step, name: string, option: string): Promise<void> =>
  slot(step, name).getByRole('radio', { name: option, exact: true }).check();

/** Chooses by hand, and does not press the button yet. */
export async function choose(step: Step, { picks, sure }: Call): Promise<void> {
  for (const [name, option] of Object.entries(picks)) await pick(step, name, option);
  await pick(step, SURENESS, sure);
}

/** Makes a call by hand and waits for what comes of it. */
export async function call(step: Step, made: Call): Promise<void> {
  await choose(step, made);
  await step.button.click();
  await expect(step.told).toBeVisible();
  const folded = step.root.locator('details.fold:not([open]) summary');
  if ((await folded.count()) > 0) await folded.click();
}

/** Makes a guess, the first option for everything asked, and reads the right answers from the page. */
export async function guess(step: Step): Promise<Readonly<Record<string, string>>> {
  const things = Object.entries(await asked(step));
  const picks = Object.fromEntries(things.map(([name, [first]]) => [name, first as string]));
  await call(step, { picks, sure: 'a guess' });
  const told = await step.told.innerText();
  return Object.fromEntries(things.map(([name]) => [name, answerIn(told, name)]));
}

const ways: Readonly<Record<string, string>> = {
  stayed: 'stays',
  stopped: 'stays',
  'went west': 'west',
  'went east': 'east'
};

/** How the page tells of a test instrument. */
const probes: Readonly<Record<string, string>> = {
  'meter volts': 'The voltmeter reads',
  'meter ohms': 'The ohmmeter reads',
  'test lamp': 'The test lamp is'
};

/** What the page told about one thing asked: "Plover went east.", "In the chain, Heron stayed.", "The meter 'home' reads the same." */
export function answerIn(told: string, name: string): string {
  const [loco, side] = name.split(', ') as [string, string | undefined];
  const part = side === undefined ? told : told.slice(told.indexOf(`In the ${side}, `));
  const way = new RegExp(`${loco} (stayed|stopped|went west|went east)`).exec(part)?.[1];
  const probe = new RegExp(`${probes[name] ?? '(?!)'} (.+?)\\.(?: |$)`).exec(told)?.[1];
  const meter =
    probe ??
    new RegExp(`${name.replace('meter ', "meter '")}' reads (.+?)\\.(?: |$)`).exec(told)?.[1];
  const option =
    meter ??
    new RegExp(`(?:^| )${name}: ([^.]+)\\.`, 'i').exec(told)?.[1] ??
    new RegExp(`${name} is (\\w+)\\.`, 'i').exec(told)?.[1] ??
    new RegExp(`${name} (falls in|stays on the rails|does not move)\\.`).exec(told)?.[1];
  const answer = way === undefined ? option : ways[way];
  if (answer === undefined) throw new Error(`'${told}' tells nothing of ${name}.`);
  return answer;
}

/** The first wrong option for everything asked. */
export async function wrongPicks(
  step: Step,
  right: Readonly<Record<string, string>>
): Promise<Readonly<Record<string, string>>> {
  const things = Object.entries(await asked(step));
  return Object.fromEntries(
    things.map(([name, options]) => [
      name,
      options.find((option) => option !== right[name]) as string
    ])
  );
}

/** The right call on the first page. */
export const firstRight = { Plover: 'east', Heron: 'stays' };

/** The first page after its call: road A is on, Plover runs, Heron stands behind its open toggle. */
export async function openHome(page: Page): Promise<Step> {
  await visit(page, '/');
  const step = stepAt(page);
  await call(step, { picks: firstRight, sure: 'fairly' });
  await expect(step.panel).toBeVisible();
  return step;
}

/** What Reset says. */
export const START = 'Back at the start.';

/** A road's toggle on the panel. */
export const toggle = ({ panel }: Step, road: string): Locator =>
  panel.getByRole('switch', { name: new RegExp(`^Road ${road} `) });

/** A road's line in the table: switch, feed rail, return rail, loco, why. */
export const line = ({ root }: Step, road: string): Locator =>
  root
    .locator('tbody tr')
    .filter({ has: root.page().locator('th', { hasText: road }) })
    .locator('td');

/** The drawing as it stands, without the marks that its maker leaves between parts. */
export const drawing = async ({ board }: Step): Promise<string> =>
  (await board.innerHTML()).replace(/<!--.*?-->/g, '');
