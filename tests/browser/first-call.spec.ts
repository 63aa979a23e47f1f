import { callByKeys } from './keys';
import { call, firstRight as right, slot, stepAt, visit } from './step';
import { expect, test } from './test';

const wrong = { Plover: 'west', Heron: 'stays' };
const KEY = 'ohmyard.progress';

const countWords = (text: string): number =>
  text.split(/\s+/).filter((word) => /\w/.test(word)).length;

for (const [screen, viewport] of [
  ['a desk', { width: 1280, height: 800 }],
  ['a phone', { width: 390, height: 844 }]
] as const) {
  test.describe(`on ${screen}`, () => {
    test.use({ viewport });

    test('the first call lies on the first screen: question, options, button', async ({ page }) => {
      await visit(page, '/');
      const first = stepAt(page);
      await expect(first.form.locator('.ask')).toBeInViewport({ ratio: 1 });
      for (const option of await first.form.getByRole('radio').all()) {
        await expect(option).toBeInViewport({ ratio: 1 });
      }
      await expect(first.button).toBeInViewport();
      expect((await first.button.boundingBox())?.y).toBeLessThan(viewport.height);
      expect(await page.evaluate(() => scrollY)).toBe(0);
      await expect(first.board.locator('svg')).toBeInViewport({ ratio: 0.9 });
    });
  });
}

test('a reader has at most sixty words to read before the first call', async ({ page }) => {
  await visit(page, '/');
  const before = await page.evaluate(() => {
    const range = document.createRange();
    range.setStartBefore(document.body);
    range.setEndBefore(document.querySelector('form') as Element);
    return range.toString();
  });
  expect(before).toContain('Plover stands on A');
  expect(countWords(before)).toBeLessThanOrEqual(60);
});

test.describe('with still pictures', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('a hand makes the first call with the keyboard alone, and it was as said', async ({
    page
  }) => {
    await visit(page, '/');
    const first = stepAt(page);
    await callByKeys(page, first, { picks: right, sure: 'fairly' });
    await expect(first.outcome).toContainText('Plover went east and Heron stayed. As you said.');
    await expect(first.status).toHaveText(
      'Road A on. Plover moves east. Heron stays: open at toggle B.'
    );
    await expect(first.board).toContainText('you: east ✓');
    await expect(first.board).toContainText('you: stays ✓');
    await expect(first.outcome.locator('aside')).toHaveCount(0);
  });

  test('after the call the Tab key goes on in the call, not from the top', async ({ page }) => {
    await visit(page, '/');
    const first = stepAt(page);
    await callByKeys(page, first, { picks: right, sure: 'fairly' });
    await page.keyboard.press('Tab');
    await expect(page.getByRole('button', { name: 'Trace it, step by step' })).toBeFocused();
  });

  test('after the call the focus is not lost', async ({ page }) => {
    await visit(page, '/');
    const first = stepAt(page);
    await callByKeys(page, first, { picks: right, sure: 'fairly' });
    await expect(first.root.locator(':focus')).toHaveCount(1);
  });

  test('a wrong and certain call shows why: words, the card, the way it went', async ({ page }) => {
    await visit(page, '/');
    const first = stepAt(page);
    await call(first, { picks: wrong, sure: 'certain' });
    await expect(first.outcome).toContainText(
      'Plover went east and Heron stayed. Not as you said.'
    );
    await expect(first.outcome).toContainText('The knob says east.');
    const card = first.outcome.getByRole('complementary');
    await expect(card.getByRole('heading')).toHaveText('Not so: “A loco runs the way it faces”');
    await expect(card.getByRole('paragraph')).toHaveText([
      /^Many of us think /,
      /^It is not so: in the yard you just saw,? /,
      /^Instead,? /
    ]);
    await expect(first.board).toContainText('you: west ≠ east');
    await expect(first.board.locator('g.ghost')).toHaveCount(1);
  });

  test('a hand follows the trace step by step: the same numbers in words and in the drawing', async ({
    page
  }) => {
    await visit(page, '/');
    const first = stepAt(page);
    await call(first, { picks: wrong, sure: 'certain' });
    const listed = first.root.locator('.trace li');
    const drawn = first.board.locator('text.number');
    await expect(listed).toHaveCount(0);
    await expect(drawn).toHaveCount(0);
    await first.root.getByRole('button', { name: 'Trace it, step by step' }).click();
    await expect(listed).toHaveText([/Out of the controller/]);
    await expect(drawn).toHaveText(['1']);
    await first.root.getByRole('button', { name: 'Next step' }).click();
    await expect(listed).toHaveCount(2);
    await expect(drawn).toHaveText(['1', '2']);
    await first.root.getByRole('button', { name: 'All steps' }).click();
    await expect(listed).toHaveText([
      /^1\s*Out of the controller/,
      /^2\s*Along the feed wire/,
      /^3\s*Through toggle A/,
      /^4\s*Along the feed dropper A/,
      /^5\s*Through Plover, rail to rail/,
      /^6\s*Along the return dropper A/,
      /^7\s*Along the return wire/
    ]);
    await expect(drawn).toHaveText(['1', '2', '3', '4', '5', '6', '7']);
  });

  test('who thinks that Heron moves finds the open toggle ringed, and the trace ends there', async ({
    page
  }) => {
    await visit(page, '/');
    const first = stepAt(page);
    await call(first, { picks: { Plover: 'east', Heron: 'east' }, sure: 'certain' });
    await expect(first.outcome).toContainText('Toggle B is still open.');
    await expect(first.outcome.getByRole('heading')).toHaveText(
      'Not so: “Off means joined to nothing”'
    );
    const ring = await first.board.locator('circle.ring').boundingBox();
    const toggle = await first.board.locator('rect.hit').nth(1).boundingBox();
    const middle = (box: typeof ring, side: 'x' | 'y', size: 'width' | 'height') =>
      (box?.[side] ?? NaN) + (box?.[size] ?? NaN) / 2;
    expect(Math.abs(middle(ring, 'x', 'width') - middle(toggle, 'x', 'width'))).toBeLessThan(8);
    expect(Math.abs(middle(ring, 'y', 'height') - middle(toggle, 'y', 'height'))).toBeLessThan(8);
    await expect(first.board.getByText('open here')).toBeVisible();
    await first.root.getByRole('button', { name: 'Trace it, step by step' }).click();
    await first.root.getByRole('button', { name: 'All steps' }).click();
    await expect(first.root.locator('.trace li').last()).toContainText(
      'Open at toggle B: no way on'
    );
    await expect(first.board.locator('text.number')).toHaveText(['1', '2', '3', '4']);
  });

  test('a wrong and certain call brings the same idea on another yard next time', async ({
    page
  }) => {
    await visit(page, '/');
    await call(stepAt(page), { picks: wrong, sure: 'certain' });
    await visit(page, '/');
    const first = stepAt(page);
    await expect(first.root).toContainText('The same idea, on another yard.');
    await expect(first.form.locator('.ask')).toHaveText(
      'You switch road C on. What do Curlew, Dunlin and Plover do?'
    );
    await expect(slot(first, 'Dunlin')).toBeVisible();
    await call(first, {
      picks: { Curlew: 'stays', Dunlin: 'stays', Plover: 'west' },
      sure: 'certain'
    });
    await expect(first.outcome).toContainText('As you said.');
    await first.root.getByRole('button', { name: 'Back to the first yard' }).click();
    await expect(first.form.locator('.ask')).toContainText('You switch road A on.');
  });

  test('a wrong call that was a guess brings the first yard again', async ({ page }) => {
    await visit(page, '/');
    await call(stepAt(page), { picks: wrong, sure: 'a guess' });
    await visit(page, '/');
    await expect(stepAt(page).form.locator('.ask')).toContainText('You switch road A on.');
  });

  test('who has called the other yard rightly is not asked it again', async ({ page }) => {
    await visit(page, '/');
    await call(stepAt(page), { picks: wrong, sure: 'certain' });
    await visit(page, '/');
    await call(stepAt(page), {
      picks: { Curlew: 'stays', Dunlin: 'stays', Plover: 'west' },
      sure: 'certain'
    });
    await expect(stepAt(page).outcome).toContainText('As you said.');
    await visit(page, '/');
    await expect(stepAt(page).form.locator('.ask')).toContainText('You switch road A on.');
  });

  test('after a wrong call a hand picks the reason', async ({ page }) => {
    await visit(page, '/lessons/01-out-and-home/');
    const step = stepAt(page);
    await call(step, { picks: { Plover: 'east' }, sure: 'fairly' });
    const reasons = step.outcome.getByRole('group', { name: 'Which reason fits?' });
    await reasons.getByRole('radio', { name: 'the feed is too weak' }).check();
    await expect(reasons.getByRole('status')).toHaveText(
      'Not that one. It is this: there is no way home.'
    );
    await reasons.getByRole('radio', { name: 'there is no way home' }).check();
    await expect(reasons.getByRole('status')).toHaveText('Yes, that is the reason.');
  });

  test('who needs no lesson goes straight to its calls', async ({ page }) => {
    await visit(page, '/lessons/01-out-and-home/');
    const step = stepAt(page);
    await call(step, { picks: { Plover: 'stays' }, sure: 'certain' });
    await step.root.getByRole('link', { name: 'You know this: straight to the calls' }).click();
    await expect(page.getByRole('heading', { name: 'Two wires, one terminal' })).toBeInViewport();
  });

  test('calls made are counted in the list of lessons, after a reload as well', async ({
    page
  }) => {
    await visit(page, '/lessons/01-out-and-home/');
    await call(stepAt(page), { picks: { Plover: 'stays' }, sure: 'fairly' });
    for (const path of ['/lessons/', '/']) {
      await visit(page, path);
      await expect(page.getByRole('listitem').filter({ hasText: 'Out and home' })).toContainText(
        '1 of 3 calls made'
      );
    }
    await page.reload();
    await expect(page.getByRole('listitem').filter({ hasText: 'Out and home' })).toContainText(
      '1 of 3 calls made'
    );
  });

  for (const [what, text] of [
    ['is no JSON', '{"version":1,"calls":'],
    ['has the wrong shape', '{"version":1,"calls":{"home/1":[{"right":"yes"}]}}'],
    ['comes from a later version', '{"version":99,"calls":{}}']
  ] as const) {
    test(`a store that ${what}: the page says so, and keeps the old text`, async ({ page }) => {
      await page.addInitScript(
        ([key, old]) => {
          if (sessionStorage.getItem('spoilt')) return;
          sessionStorage.setItem('spoilt', 'once');
          localStorage.setItem(key, old);
        },
        [KEY, text] as const
      );
      await visit(page, '/');
      await expect(page.locator('main > [role=status]')).toContainText(
        'Your saved progress could not be read'
      );
      await call(stepAt(page), { picks: right, sure: 'fairly' });
      const kept = await page.evaluate(() => Object.entries(localStorage));
      expect(kept.filter(([key, value]) => key !== KEY && value === text)).toHaveLength(1);
      await visit(page, '/');
      await expect(page.locator('main > [role=status]')).toHaveCount(0);
      const after = await page.evaluate(() => Object.entries(localStorage));
      expect(after.filter(([key, value]) => key !== KEY && value === text)).toHaveLength(1);
    });
  }

  test('a browser that keeps nothing: the call can be made, and the page says so', async ({
    page
  }) => {
    await page.addInitScript(() => {
      Object.defineProperty(globalThis, 'localStorage', {
        get() {
          throw new DOMException('The store is closed.', 'SecurityError');
        }
      });
    });
    await visit(page, '/');
    await call(stepAt(page), { picks: right, sure: 'fairly' });
    await expect(stepAt(page).outcome).toContainText('As you said.');
    await expect(page.locator('main > [role=status]')).toContainText('keeps nothing');
  });
});
