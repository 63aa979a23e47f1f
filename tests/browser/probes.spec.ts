import { read } from '../../src/lib/yard';
import { moment } from '../yard/build';
import { tabTo } from './keys';
import { guess, openHome, stepAt, toggle, visit, type Step } from './step';
import { expect, test } from './test';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

/** What the engine says that a voltmeter reads on the first page's yard, both roads off. */
function engineVolts(points: [string, string]): string {
  const { yard, scene } = moment(
    { deckRoads: 2 },
    {
      locos: { Plover: 'A', Heron: 'B' },
      controller: 0.6,
      edits: [{ volts: points }]
    }
  );
  return `${(read(yard, scene).volts('meter volts') as number).toFixed(1)} V`;
}

const field = ({ panel }: Step, name: string) => panel.getByLabel(name, { exact: true });

test('a hand sets up the voltmeter with the keyboard alone: it reads the engine’s value', async ({
  page
}) => {
  const step = await openHome(page);
  await tabTo(page, toggle(step, 'A'));
  await page.keyboard.press('Space');
  await expect(step.status).toHaveText(/^Road A off\./);
  await tabTo(page, step.panel.locator('summary'));
  await page.keyboard.press('Enter');
  await tabTo(page, field(step, 'Instrument'));
  await page.keyboard.press('ArrowDown');
  await expect(field(step, 'Instrument')).toHaveValue('volts');
  await tabTo(page, field(step, 'Second probe'));
  const wanted = 'feed rail B';
  for (let steps = 0; steps < 12; steps++) {
    if ((await field(step, 'Second probe').inputValue()) === wanted) break;
    await page.keyboard.press('ArrowDown');
  }
  await expect(field(step, 'Second probe')).toHaveValue(wanted);
  const reads = engineVolts(['feed', wanted]);
  expect(reads).toBe('7.2 V');
  await expect(step.status).toHaveText(`Voltmeter: ${reads} between feed and feed rail B.`);
  await expect(step.board.locator('text.value')).toHaveText(reads);
});

test('an ohmmeter is refused while the supply is on, and buzzes once it is off', async ({
  page
}) => {
  const step = await openHome(page);
  await step.panel.locator('summary').click();
  await field(step, 'Instrument').selectOption('ohms');
  await expect(step.status).toHaveText('The supply is on: switch it off before you measure ohms.');
  await expect(field(step, 'Instrument')).toHaveValue('none');
  await step.panel.getByRole('switch', { name: /^Supply/ }).click();
  await expect(step.status).toHaveText(/^Supply off\./);
  await field(step, 'Instrument').selectOption('ohms');
  await expect(step.status).toHaveText(/^Ohmmeter: 0\.\d+ Ω, it buzzes between/);
});

test('a test lamp from the feed to Heron’s dead feed rail: the page tells how it glows', async ({
  page
}) => {
  const step = await openHome(page);
  await step.panel.locator('summary').click();
  await field(step, 'Second probe').selectOption('feed rail B');
  await field(step, 'Instrument').selectOption('testLamp');
  await expect(step.status).toContainText(/Test lamp: (dark|dim|bright)\. /);
  await expect(step.board.locator('path.ray')).not.toHaveCount(0);
});

test('who points at a road in one view finds it lit in rows, plan and panel, and told below', async ({
  page
}) => {
  await visit(page, '/lessons/11-toggle-and-plug-and-pin/');
  const step = stepAt(page, 'Home at three');
  await guess(step);
  await step.panel.getByRole('button', { name: 'Back to the start' }).click();
  const view = (name: string) => step.board.locator(`svg[aria-label^="${name} of"]`);
  const lit = (name: string) => view(name).locator('.ring, .halo');
  for (const name of ['Rows', 'Plan', 'Panel']) await expect(lit(name)).toHaveCount(0);
  await toggle(step, '2').focus();
  await expect(lit('Rows')).toHaveCount(1);
  await expect(lit('Plan')).toHaveCount(1);
  await expect(lit('Panel')).toHaveCount(2);
  await expect(step.board.locator('.readout')).toHaveText(/^Toggle 2: closed, .*0\.00 A\.$/);
  await toggle(step, '2').blur();
  for (const name of ['Rows', 'Plan', 'Panel']) await expect(lit(name)).toHaveCount(0);
  await view('Panel').locator('text.letter').first().hover();
  await expect(step.board.locator('.readout')).toHaveText(/^Road .: /);
  await expect(lit('Rows')).toHaveCount(1);
  await expect(lit('Plan')).toHaveCount(1);
});

test('a hand throws a toggle on the drawn panel', async ({ page }) => {
  await visit(page, '/lessons/11-toggle-and-plug-and-pin/');
  const step = stepAt(page, 'Home at three');
  await guess(step);
  await expect(toggle(step, 'A')).toHaveAttribute('aria-checked', 'false');
  await step.board.locator('svg[aria-label^="Panel of"] rect.hit').first().click();
  await expect(toggle(step, 'A')).toHaveAttribute('aria-checked', 'true');
});

test('before the call a road that is asked about is not told to who points at it', async ({
  page
}) => {
  await visit(page, '/');
  const step = stepAt(page);
  const { x, y } = (await step.board.locator('text.caption').first().boundingBox()) as {
    x: number;
    y: number;
  };
  await page.mouse.move(x + 4, y - 18);
  await expect(step.board.locator('.readout')).toHaveText(/your call first\.$/);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test('after the call the panel, unfolded, stands right under its board', async ({ page }) => {
    const step = await openHome(page);
    const [board, panel, outcome] = await Promise.all(
      [step.board, step.panel, step.outcome].map((each) => each.boundingBox())
    );
    const foot = (board?.y ?? 0) + (board?.height ?? 0);
    expect((panel?.y ?? Infinity) - foot).toBeLessThan(180);
    expect(panel?.y).toBeLessThan(outcome?.y ?? 0);
  });
});
