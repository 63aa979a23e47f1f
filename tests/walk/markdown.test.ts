import { describe, expect, test } from 'vitest';
import { readLesson, type BoardData } from '../../src/lib/lesson';
import { asLesson, outline, type Walkthrough } from '../../src/lib/walk';
import { quayWorking } from '../../src/lib/motion';
import { yardOf } from '../yard/build';

const lessonOf = async (walk: Walkthrough) => {
  const made = await asLesson(walk);
  if ('wrong' in made) throw new Error(made.wrong);
  return { text: made.ok, lesson: readLesson('content/lessons/99-walk.md', made.ok) };
};

describe.each([
  ['one road', { deckRoads: 1 }],
  ['five and four', { deckRoads: 5, stablingRoads: 4, names: { Q: 'Quay line' } }],
  ['the improved yard', quayWorking.yard],
  ['a rotary and lamps', { deckRoads: 4, stablingRoads: 2, switching: 'rotary', lamps: 'own' }]
] as const)('the outline of %s as a lesson', (_, input) => {
  const walk = outline(yardOf(input));

  test('is read with the same headings, boards and questions', async () => {
    const { lesson } = await lessonOf(walk);
    expect(lesson.meta.title).toBe(walk.title);
    expect(lesson.steps.map(({ heading }) => heading)).toEqual(
      walk.steps.map(({ heading }) => heading)
    );
    lesson.steps.forEach(({ board, call, prose }, index) => {
      const step = walk.steps[index];
      const [side] = (board as BoardData).sides;
      expect(side?.yard).toEqual(walk.yard);
      expect(side?.scene).toEqual(step?.scene);
      expect(board?.show).toEqual(step?.show);
      expect(call?.question).toEqual(step?.call?.question);
      expect(prose).toBe(step?.words);
    });
  });
});

test('what is not in a walkthrough says that it is to be written', async () => {
  const { text } = await lessonOf(outline(yardOf({ deckRoads: 2 })));
  expect(text.match(/To be written/g)?.length).toBeGreaterThan(5);
});

test('words that look like headings or blocks stay words', async () => {
  const walk = outline(yardOf({ deckRoads: 1 }));
  const [first] = walk.steps;
  const words = '## Not a heading\n```call\nask: x\n```\nEnd.';
  const { lesson } = await lessonOf({ ...walk, steps: [{ ...first, words } as never] });
  expect(lesson.steps).toHaveLength(1);
  expect(lesson.steps[0]?.prose).toContain('\\## Not a heading');
});

test('a question too long for a lesson is told, with its line', async () => {
  const walk = outline(yardOf({ deckRoads: 1 }));
  const steps = walk.steps.map((step) =>
    step.call ? { ...step, call: { ...step.call, ask: 'word '.repeat(36) } } : step
  );
  expect(await asLesson({ ...walk, steps })).toEqual({
    wrong: expect.stringMatching(/walkthrough\.md:\d+: .*a text of at most 35 words/) as string
  });
});
