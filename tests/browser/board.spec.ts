import type { Locator } from '@playwright/test';
import { pressByKeys, tabTo } from './keys';
import {
  drawing,
  firstRight,
  guess,
  line,
  openHome,
  START,
  stepAt,
  SURENESS,
  toggle,
  visit,
  type Step
} from './step';
import { expect, test } from './test';

/** The switch as it is drawn. */
const drawnToggle = ({ board }: Step, index: number): Locator =>
  board.locator('rect.hit').nth(index);

/** Every live message beside the board, from now on. */
async function listen({ root }: Step): Promise<() => Promise<readonly string[]>> {
  const heard = await root.evaluateHandle((element) => {
    const messages: string[] = [];
    const live = element.querySelectorAll('[role=status], [role=alert], [aria-live], output');
    for (const region of [...live].filter(({ ariaLive }) => ariaLive !== 'off')) {
      new MutationObserver(() => messages.push(region.textContent.trim())).observe(region, {
        childList: true,
        characterData: true,
        subtree: true
      });
    }
    return messages;
  });
  return () => heard.jsonValue();
}

test.describe('with still pictures', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('a hand clicks the drawn switch before the call: nothing happens, nothing is told', async ({
    page
  }) => {
    await visit(page, '/');
    const step = stepAt(page);
    const before = await drawing(step);
    await drawnToggle(step, 0).click();
    await drawnToggle(step, 1).click();
    await expect(step.status).toHaveText('The result waits for your call.');
    await page.mouse.move(0, 0);
    expect(await drawing(step)).toBe(before);
    await expect(step.panel).toHaveCount(0);
  });

  test('a hand throws a toggle on the panel: board, status and table follow', async ({ page }) => {
    const step = await openHome(page);
    await expect(toggle(step, 'B')).toHaveAttribute('aria-checked', 'false');
    await toggle(step, 'B').click();
    await expect(toggle(step, 'B')).toHaveAttribute('aria-checked', 'true');
    await expect(step.status).toHaveText(/^Road B on\. .*Heron moves east/);
    await expect(step.board.locator('text.road')).toHaveText(['A on', 'B on']);
    await expect(line(step, 'B').first()).toHaveText('on');
    await toggle(step, 'B').click();
    await expect(step.status).toHaveText(/^Road B off\./);
    await expect(step.board.locator('text.road')).toHaveText(['A on', 'B off']);
  });

  test('a hand clicks the switch in the drawing: it does what the panel does', async ({ page }) => {
    const step = await openHome(page);
    await drawnToggle(step, 1).click();
    await expect(toggle(step, 'B')).toHaveAttribute('aria-checked', 'true');
    await expect(step.status).toHaveText(/^Road B on\./);
    await drawnToggle(step, 0).click();
    await expect(toggle(step, 'A')).toHaveAttribute('aria-checked', 'false');
    await expect(step.status).toHaveText(/^Road A off\./);
  });

  test('the keyboard throws a toggle, with Space and with Enter', async ({ page }) => {
    const step = await openHome(page);
    await tabTo(page, toggle(step, 'B'));
    await page.keyboard.press('Space');
    await expect(toggle(step, 'B')).toHaveAttribute('aria-checked', 'true');
    await expect(toggle(step, 'B')).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(toggle(step, 'B')).toHaveAttribute('aria-checked', 'false');
  });

  test('the keyboard turns the knob: east, west, centre', async ({ page }) => {
    const step = await openHome(page);
    const knob = step.panel.getByRole('slider', { name: 'Knob' });
    await tabTo(page, knob);
    await expect(knob).toHaveAttribute('aria-valuetext', '7.2 V east');
    await page.keyboard.press('ArrowRight');
    await expect(knob).toHaveAttribute('aria-valuetext', '8.4 V east');
    await expect(step.status).toHaveText(/^Knob 8\.4 V east\./);
    await page.keyboard.press('Home');
    await expect(knob).toHaveAttribute('aria-valuetext', '12.0 V west');
    await expect(step.status).toHaveText(/^Knob 12\.0 V west\. Plover moves west\./);
    await expect(step.board).toContainText('12.0 V west');
    await pressByKeys(page, step.panel.getByRole('button', { name: 'Centre' }));
    await expect(knob).toHaveAttribute('aria-valuetext', 'centre: no volts');
    await expect(step.status).toHaveText(/^Knob centre: no volts\./);
    await expect(step.board.locator('path.chevron')).toHaveCount(0);
  });

  test('a hand presses Reset: the board stands as it stood at the start', async ({ page }) => {
    await visit(page, '/lessons/03-a-switch-is-a-gap/');
    const step = stepAt(page, 'Trace it all yourself');
    const start = await drawing(step);
    await toggle(step, 'A').click();
    await expect(step.status).toHaveText(/^Road A off\./);
    await step.panel.getByRole('slider').press('End');
    await expect(step.status).toHaveText(/^Knob 12\.0 V east\./);
    expect(await drawing(step)).not.toBe(start);
    await step.panel.getByRole('button', { name: 'Back to the start' }).click();
    await expect(step.status).toHaveText(START);
    expect(await drawing(step)).toBe(start);
    await expect(toggle(step, 'A')).toHaveAttribute('aria-checked', 'true');
  });

  test('who holds a toggle in focus finds it ringed in the drawing', async ({ page }) => {
    const step = await openHome(page);
    await step.panel.getByRole('button', { name: 'Back to the start' }).click();
    await expect(step.board.locator('circle.ring')).toHaveCount(0);
    await tabTo(page, toggle(step, 'A'));
    const ring = step.board.locator('circle.ring');
    await expect(ring).toHaveCount(1);
    const [ringed, drawn] = [await ring.boundingBox(), await drawnToggle(step, 0).boundingBox()];
    expect(ringed?.x).toBeLessThan((drawn?.x ?? 0) + (drawn?.width ?? 0));
    expect((ringed?.x ?? 0) + (ringed?.width ?? 0)).toBeGreaterThan(drawn?.x ?? Infinity);
    expect(Math.abs((ringed?.y ?? 0) - (drawn?.y ?? 0))).toBeLessThan(20);
    await page.keyboard.press('Shift+Tab');
    await expect(ring).toHaveCount(0);
  });

  test('a hand throws a toggle: readers hear one message', async ({ page }) => {
    const step = await openHome(page);
    const heard = await listen(step);
    await toggle(step, 'B').click();
    await expect(step.status).toHaveText(/^Road B on\./);
    expect(await heard()).toHaveLength(1);
  });

  test('a hand turns the knob: readers hear one message', async ({ page }) => {
    const step = await openHome(page);
    const heard = await listen(step);
    await step.panel.getByRole('slider').press('ArrowRight');
    await expect(step.status).toHaveText(/^Knob 8\.4 V east\./);
    expect(await heard()).toHaveLength(1);
  });

  test('who puts one of two wires back is not told that the wires are right', async ({ page }) => {
    await visit(page, '/lessons/01-out-and-home/');
    const step = stepAt(page, 'Cut to go?');
    await guess(step);
    const feed = step.panel.getByRole('switch', { name: /^The feed dropper A is off/ });
    await feed.click();
    await expect(step.status).toHaveText(/^The feed dropper A is off\./);
    await feed.click();
    await expect(feed).toHaveAttribute('aria-checked', 'false');
    await expect(line(step, 'A').last()).toHaveText('open at return dropper A');
    await expect(step.status).not.toContainText('The wires are put right');
  });

  test('a hand switches a road off: the status tells of the loco that stands there', async ({
    page
  }) => {
    const step = await openHome(page);
    await toggle(step, 'B').click();
    await expect(step.status).toHaveText(/^Road B on\./);
    await toggle(step, 'B').click();
    await expect(step.status).toHaveText(/^Road B off\./);
    await expect(step.status).toContainText('Heron stays: open at toggle B.');
  });

  test('a hand tries each change that the call asked about', async ({ page }) => {
    await visit(page, '/lessons/02-the-same-all-the-way/');
    const step = stepAt(page, 'One gap, two places');
    await guess(step);
    await step.outcome.getByRole('button', { name: 'only the feed dropper' }).click();
    await expect(step.status).toHaveText(
      'The feed dropper A is off. Plover stays: open at feed dropper A.'
    );
    await step.outcome.getByRole('button', { name: 'only the return dropper' }).click();
    await expect(step.status).toHaveText(
      'The return dropper A is off. Plover stays: open at return dropper A.'
    );
  });

  test('one panel throws the toggles of both yards of a pair', async ({ page }) => {
    await visit(page, '/lessons/04-more-roads/');
    const step = stepAt(page, 'A switch in the loop');
    await guess(step);
    await expect(step.board.getByText('B off')).toHaveCount(2);
    await toggle(step, 'B').click();
    await expect(step.board.getByText('B on')).toHaveCount(2);
  });
});

test('motion and no motion end in the same facts', async ({ page }) => {
  const ends = async (reducedMotion: 'reduce' | 'no-preference') => {
    await page.emulateMedia({ reducedMotion });
    const step = await openHome(page);
    await toggle(step, 'B').click();
    await expect(step.status).toHaveText(/^Road B on\./);
    return { status: await step.status.innerText(), drawing: await drawing(step) };
  };
  expect(await ends('no-preference')).toEqual(await ends('reduce'));
});

test('who wants no motion sees none: the end stands there at once', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.addInitScript(() => {
    let frames = 0;
    const ask = globalThis.requestAnimationFrame.bind(globalThis);
    globalThis.requestAnimationFrame = (run) => {
      document.documentElement.dataset.frames = String(++frames);
      return ask(run);
    };
  });
  const step = await openHome(page);
  await toggle(step, 'B').click();
  await expect(step.status).toHaveText(/^Road B on\./);
  const frames = await page.evaluate(() => Number(document.documentElement.dataset.frames ?? 0));
  expect(frames).toBeLessThan(10);
});

test('a hand throws the next switch while the yard still moves: the last word counts', async ({
  page
}) => {
  const step = await openHome(page);
  await toggle(step, 'B').click();
  await toggle(step, 'A').click();
  await expect(step.status).toHaveText(/^Road A off\. Heron (moves|goes) east/);
  await expect(step.board.locator('text.road')).toHaveText(['A off', 'B on']);
});

test.describe('on a phone, by touch', () => {
  test.use({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    contextOptions: { reducedMotion: 'reduce' }
  });

  test('a finger makes the call, throws a toggle on the panel and one in the drawing', async ({
    page
  }) => {
    await visit(page, '/');
    const step = stepAt(page);
    for (const [name, option] of [...Object.entries(firstRight), [SURENESS, 'fairly']]) {
      const group = step.root.getByRole('radiogroup', { name: name as string, exact: true });
      await group.getByRole('radio', { name: option as string, exact: true }).tap();
    }
    await step.button.tap();
    await expect(step.outcome).toContainText('As you said.');
    await step.root.getByText('Panel: try it yourself').tap();
    await toggle(step, 'B').tap();
    await expect(step.status).toHaveText(/^Road B on\./);
    await drawnToggle(step, 0).tap();
    await expect(step.status).toHaveText(/^Road A off\./);
    await expect(toggle(step, 'A')).toHaveAttribute('aria-checked', 'false');
  });

  test('a finger changes from rows to plan and back: one view at a time', async ({ page }) => {
    await visit(page, '/lessons/04-more-roads/');
    const step = stepAt(page, 'Try it first');
    const [rows, plan] = [
      step.board.getByRole('button', { name: 'rows' }),
      step.board.getByRole('button', { name: 'plan' })
    ];
    await expect(step.board.locator('svg')).toHaveCount(1);
    await expect(step.board.locator('svg')).toHaveAttribute('aria-label', /^Rows of/);
    await plan.tap();
    await expect(plan).toHaveAttribute('aria-pressed', 'true');
    await expect(rows).toHaveAttribute('aria-pressed', 'false');
    await expect(step.board.locator('svg')).toHaveCount(1);
    await expect(step.board.locator('svg')).toHaveAttribute('aria-label', /^Plan of/);
    await rows.tap();
    await expect(step.board.locator('svg')).toHaveAttribute('aria-label', /^Rows of/);
  });
});
