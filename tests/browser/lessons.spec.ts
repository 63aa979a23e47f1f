import type { Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { readLesson, type Side } from '../../src/lib/lesson';
import { answer, answerKey, asked as things, type Question } from '../../src/lib/predict';
import { callByKeys, pressByKeys, tabTo } from './keys';
import { lessonPaths } from './lessons';
import { asked, guess, stepAt, visit, wrongPicks, type Step } from './step';
import { expect, test } from './test';

type Answers = Readonly<Record<string, string>>;

/** The right answers of a step's call and of its twin, as the engine has them. */
interface Crib {
  readonly first: Answers | undefined;
  readonly twin: Answers | undefined;
}

const another = ({ root }: Step) => root.getByRole('button', { name: 'Same idea, another yard' });
const headings = (page: Page) => page.locator('section.step .words h2').allTextContents();

const right = (question: Question, sides: readonly Side[]): Answers =>
  Object.fromEntries(
    sides.flatMap(({ title, yard, scene }) => {
      const { answers } = answer(question, yard, scene);
      return things(question).map(({ id }) => [
        answerKey(id, sides.length > 1 ? title : undefined),
        answers[id] as string
      ]);
    })
  );

/** What the engine says to every call of a lesson, by the headings of its steps. */
function cribOf(path: string): ReadonlyMap<string, Crib> {
  const file = `content${path.replace(/\/$/, '.md')}`;
  const { steps } = readLesson(file, readFileSync(file, 'utf8'));
  return new Map(
    steps.map(({ heading, board, call }) => [
      heading,
      {
        first: call && board && right(call.question, board.sides),
        twin: call?.twin && right(call.twin.question, [call.twin.side])
      }
    ])
  );
}

/** Follows a trace to its end with the keyboard, trying what is offered where the way is asked for. */
async function traceByKeys(page: Page, step: Step): Promise<void> {
  const trace = step.root.locator('.trace');
  const listed = trace.locator('li');
  await pressByKeys(page, trace.getByRole('button', { name: 'Trace it, step by step' }));
  await expect(listed).toHaveCount(1);
  for (let shown = 1; (await trace.getByRole('button').count()) > 0; shown++) {
    const names = await trace.getByRole('button').allTextContents();
    for (const name of names.filter((each) => each !== 'All steps')) {
      await pressByKeys(page, trace.getByRole('button', { name, exact: true }));
      if ((await listed.count()) > shown) break;
      await expect(trace.getByRole('status')).toContainText(`Not ${name}`);
    }
    await expect(listed).toHaveCount(shown + 1);
  }
  const numbers = step.board.locator('svg[aria-label^="Rows of"]').first().locator('text.number');
  await expect(numbers).toHaveCount(await listed.count());
}

/** Calls everything wrongly and surely; what comes of it must be told and not punished. */
async function callWrongly(page: Page, step: Step, right: Answers): Promise<void> {
  await callByKeys(page, step, { picks: await wrongPicks(step, right), sure: 'certain' });
  await expect(step.outcome).toContainText('Not as you said.');
  await expect(step.outcome.locator('aside p')).toHaveCount(3);
  const reasons = step.outcome.getByRole('group', { name: 'Which reason fits?' });
  if ((await reasons.count()) > 0) {
    await tabTo(page, reasons);
    await page.keyboard.press('Space');
    await expect(reasons.getByRole('status')).toHaveText(
      /^(Yes, that is the reason\.|Not that one\. It is this: .+\.)$/
    );
  }
}

test.use({ contextOptions: { reducedMotion: 'reduce' } });

for (const path of lessonPaths) {
  test(`a learner goes through ${path} with the keyboard alone: every call wrong, its twin right`, async ({
    page
  }) => {
    test.slow();
    await visit(page, path);
    const crib = cribOf(path);
    let calls = 0;
    for (const heading of await headings(page)) {
      const step = stepAt(page, heading);
      const { first, twin } = crib.get(heading) as Crib;
      if (first) {
        calls++;
        await callWrongly(page, step, first);
      }
      if ((await step.root.locator('.trace button').count()) > 0) await traceByKeys(page, step);
      if (twin) {
        await pressByKeys(page, another(step));
        expect(Object.keys(await asked(step))).toEqual(Object.keys(twin));
        await callByKeys(page, step, { picks: twin, sure: 'fairly' });
        await expect(step.outcome).toContainText('As you said.');
      }
    }
    expect(calls).toBeGreaterThan(0);
    const next = page.locator('a.next');
    await pressByKeys(page, next);
    await expect(page).not.toHaveURL(new RegExp(`${path}$`));
    await visit(page, '/lessons/');
    const made = page.getByRole('listitem').filter({ has: page.locator(`a[href$="${path}"]`) });
    await expect(made).toContainText(`${calls} of ${calls} calls made`);
  });
}

test('a hand traces the loop of lesson 2: the last two steps are the learner’s', async ({
  page
}) => {
  await visit(page, '/lessons/02-the-same-all-the-way/');
  const { root, board } = stepAt(page, 'Follow it once more');
  const trace = root.locator('.trace');
  await trace.getByRole('button', { name: 'Trace it, step by step' }).click();
  for (let shown = 1; shown < 6; shown++) {
    await expect(trace.locator('li')).toHaveCount(shown);
    await expect(trace.getByRole('button', { name: 'All steps' })).toHaveCount(0);
    await trace.getByRole('button', { name: 'Next step' }).click();
  }
  await expect(trace.locator('li').last()).toContainText('Along the return dropper A');
  await expect(trace.getByText('Where does it go next?')).toBeVisible();
  await trace.getByRole('button', { name: 'return wire' }).click();
  await expect(trace.getByRole('status')).toHaveText(
    'Not return wire: the current does not go there next.'
  );
  await expect(trace.locator('li')).toHaveCount(6);
  await trace.getByRole('button', { name: 'meter home' }).click();
  await expect(trace.getByRole('status')).toHaveText('');
  await trace.getByRole('button', { name: 'return wire' }).click();
  await expect(trace.locator('li')).toHaveCount(8);
  await expect(trace.getByRole('button')).toHaveCount(0);
  await expect(board.locator('text.number')).toHaveCount(8);
});

test('a hand traces the whole loop of lesson 3, place by place', async ({ page }) => {
  await visit(page, '/lessons/03-a-switch-is-a-gap/');
  const { root, board } = stepAt(page, 'Trace it all yourself');
  const trace = root.locator('.trace');
  await trace.getByRole('button', { name: 'Trace it, step by step' }).click();
  const way = [
    'feed wire',
    'toggle A',
    'feed dropper A',
    'Plover',
    'return dropper A',
    'return wire'
  ];
  for (const [index, place] of way.entries()) {
    await expect(trace.locator('li')).toHaveCount(index + 1);
    await expect(trace.getByRole('button', { name: 'Next step' })).toHaveCount(0);
    await trace.getByRole('button', { name: place, exact: true }).click();
  }
  await expect(trace.locator('li')).toHaveCount(7);
  await expect(trace.getByRole('button')).toHaveCount(0);
  await expect(board.locator('text.number')).toHaveText(['1', '2', '3', '4', '5', '6', '7']);
});

test('who traces back where the current came from is not told that the two do not touch', async ({
  page
}) => {
  await visit(page, '/lessons/03-a-switch-is-a-gap/');
  const trace = stepAt(page, 'Trace it all yourself').root.locator('.trace');
  await trace.getByRole('button', { name: 'Trace it, step by step' }).click();
  await trace.getByRole('button', { name: 'feed wire', exact: true }).click();
  await trace.getByRole('button', { name: 'controller', exact: true }).click();
  await expect(trace.locator('li')).toHaveCount(2);
  await expect(trace.getByRole('status')).toContainText('Not controller');
  await expect(trace.getByRole('status')).not.toContainText('does not touch');
});

test('where both rails have one ink, no way through the loco is traced', async ({ page }) => {
  await visit(page, '/lessons/03-a-switch-is-a-gap/');
  const step = stepAt(page, 'Wake up: two wires');
  await guess(step);
  await expect(step.told).toHaveText('Dunlin stayed.');
  await expect(step.root.getByRole('button', { name: 'Trace it, step by step' })).toHaveCount(0);
  await expect(step.root.locator('.trace li')).toHaveCount(0);
  await expect(step.board.locator('text.number')).toHaveCount(0);
});
