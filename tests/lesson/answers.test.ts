import { describe, expect, test } from 'vitest';
import { answer, answerKey, asked, watch, type Question } from '../../src/lib/predict';
import { settle } from '../../src/lib/motion';
import type { Scene, Yard } from '../../src/lib/yard';
import { pages } from './files';

interface Put {
  readonly name: string;
  readonly question: Question;
  readonly yard: Yard;
  readonly scene: Scene;
}

const calls = pages.flatMap(({ lesson }) =>
  lesson.steps.flatMap(({ call, board }) => (call && board ? [{ call, board }] : []))
);

/** Every question of every lesson with each yard it is put to. */
const put: readonly Put[] = calls.flatMap(({ call, board }) => [
  ...board.sides.map((side) => ({
    ...side,
    name: `${call.id} ${side.title}`.trim(),
    question: call.question
  })),
  ...(call.twin
    ? [{ ...call.twin.side, name: `${call.id} twin`, question: call.twin.question }]
    : [])
]);

describe('answer(question): every call and every twin', () => {
  test('there are calls and twins to check', () => {
    expect(calls.length).toBeGreaterThanOrEqual(pages.length);
    expect(put.filter(({ name }) => name.endsWith('twin')).length).toBeGreaterThan(10);
  });

  test.each(put)('$name: the engine’s answer is one of the options', (each) => {
    const { answers } = answer(each.question, each.yard, each.scene);
    const all = asked(each.question);
    expect(all.length).toBeGreaterThan(0);
    for (const { id, options } of all) expect(options).toContain(answers[id]);
  });

  test.each(calls.map(({ call, board }) => ({ id: call.id, call, board })))(
    '$id: words stand by every wrong option and not by the right one',
    ({ call, board }) => {
      const found = board.sides.flatMap((side) => {
        const { answers } = answer(call.question, side.yard, side.scene);
        const title = board.sides.length > 1 ? side.title : undefined;
        return asked(call.question).map(({ id, options }) => ({
          key: answerKey(id, title),
          wrong: options.filter((option) => option !== answers[id]).sort()
        }));
      });
      expect(Object.keys(call.wrong).sort()).toEqual(found.map(({ key }) => key).sort());
      for (const { key, wrong } of found) {
        expect(Object.keys(call.wrong[key] ?? {}).sort()).toEqual(wrong);
      }
    }
  );

  test.each(put.filter(({ question }) => question.compare && 'speed' in question.compare))(
    '$name: no backstop decides how fast its loco runs',
    ({ question, yard, scene }) => {
      const { events } = watch(yard, settle(yard, scene), question.do);
      expect(events).toEqual([]);
    }
  );
});
