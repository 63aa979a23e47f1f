import { describe, expect, test } from 'vitest';
import { answer, answerKey, asked } from '../../src/lib/predict';
import { readIdeas } from '../../src/lib/lesson';
import { ideasIn, keyOf, letterAt } from '../../src/lib/ui/handout/key';
import { unique } from '../../src/lib/ui/unique';
import { Session } from '../../src/lib/ui/session.svelte';
import {
  admitWalk,
  lessonHandout,
  pickedHandout,
  plans,
  WALK_FORMAT,
  walkHandout,
  type PaperCall
} from '../../src/lib/walk';
import { pages } from '../lesson/files';

const lessons = pages.map(({ lesson }) => lesson);
const handouts = lessons.map(lessonHandout);
const sessionOf = ({ board, question }: PaperCall) => new Session(board, question);

/** The engine's answers, each as its letter and its words. */
const engineSays = ({ board, question }: PaperCall): readonly string[] =>
  board.sides.flatMap((side) => {
    const { answers } = answer(question, side.yard, side.scene);
    const title = board.sides.length > 1 ? side.title : undefined;
    const all = asked(question);
    return all.map(({ id, options }) => {
      const name = all.length * board.sides.length > 1 ? `${answerKey(id, title)}: ` : '';
      return `${name}${letterAt(options.indexOf(answers[id] as string))}, ${answers[id]}`;
    });
  });

const idea = (code: string) => ({
  file: `${code}.md`,
  text: `---\ncode: ${code}\ntitle: The ${code}\n---\nMany think.\n\nNot so.\n\nInstead.\n`
});

describe('a handout of a lesson', () => {
  test('has every call of its lesson, in its order, with a drawing', () => {
    expect(handouts.length).toBeGreaterThan(10);
    for (const [index, { calls }] of handouts.entries()) {
      const wanted = lessons[index]?.steps.flatMap(({ call }) => (call ? [call.id] : []));
      expect(calls.map(({ id }) => id)).toEqual(wanted);
      for (const { board } of calls) expect(board.show.length).toBeGreaterThan(0);
      expect(calls.some(({ board }) => board.show.includes('diagram'))).toBe(false);
    }
  });

  /** One lesson in three: the engine's answers to all of them are tested where lessons are. */
  const some = handouts.filter((_, index) => index % 3 === 2);
  test.each(some.map((handout) => ({ name: handout.title, handout })))(
    '$name: its key has the engine’s answers, and a line for every other option',
    ({ handout }) => {
      for (const call of handout.calls) {
        const session = sessionOf(call);
        const key = keyOf(call, session);
        expect(key.answers).toEqual(engineSays(call));
        const options = session.slots.flatMap((slot) => slot.options);
        expect(key.wrong.length).toBe(options.length - session.slots.length);
        for (const { letter, option, of } of key.wrong) {
          expect(key.answers).not.toContain(`${of && `${of}: `}${letter}, ${option}`);
        }
        expect(key.look).toBeTruthy();
      }
    }
  );
});

test('a handout of a workshop has the calls of its plan, each under its lesson’s title', () => {
  for (const { name, calls } of plans) {
    const handout = pickedHandout(name, calls, lessons);
    expect(handout.calls.map(({ id }) => id)).toEqual(calls);
    expect(new Set(handout.calls.map(({ heading }) => heading)).size).toBe(calls.length);
  }
});

test('a handout of a walkthrough has its calls, answered by the engine', () => {
  const walk = admitWalk({
    format: WALK_FORMAT,
    version: 1,
    title: 'Two steps',
    yard: { deckRoads: 2 },
    steps: [
      { heading: 'Look', words: 'Here it is.' },
      {
        heading: 'Call',
        words: 'What now?',
        scene: { locos: { Plover: 'A' }, controller: '60% east' },
        show: ['panel'],
        call: { ask: 'You switch A on.', do: { switch: { A: 'on' } }, about: ['Plover'] }
      }
    ]
  });
  const { title, calls } = walkHandout(walk);
  const [call] = calls;
  expect([title, calls.length, call?.heading, call?.board.show]).toEqual([
    'Two steps',
    1,
    'Call',
    ['rows']
  ]);
  const key = keyOf(call as PaperCall, sessionOf(call as PaperCall));
  expect(key.answers).toEqual(['C, east']);
  expect(key.reasons.join(' ')).toContain('Row A is whole');
  expect([key.wrong, key.look]).toEqual([[], undefined]);
});

test('ideasIn(keys, ideas) gives each card that a wrong answer names once, in the order of the calls', () => {
  const keys = (handouts[0]?.calls ?? []).map((each) => keyOf(each, sessionOf(each)));
  const named = unique(keys.flatMap(({ wrong }) => wrong.map(({ words }) => words.idea)));
  expect(named.length).toBeGreaterThan(1);
  const cards = ideasIn(keys, readIdeas([...named, 'M20'].sort().map(idea)));
  expect(cards.map(({ code }) => code)).toEqual(named);
});
