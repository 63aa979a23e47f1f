import { describe, expect, test } from 'vitest';
import { admitWalk, MAX_STEPS, WALK_FORMAT, walkFile } from '../../src/lib/walk';

const step = {
  heading: 'One road',
  words: 'Out by the feed, home by the return.',
  scene: { locos: { Plover: 'A' }, controller: '60% east' },
  lit: ['road A'],
  call: {
    ask: 'You switch road A on. What does Plover do?',
    do: { switch: { A: 'on' } },
    about: ['Plover']
  }
};
const walk = (more: object = {}, steps: readonly object[] = [step]) => ({
  format: WALK_FORMAT,
  version: 1,
  title: 'How it is wired',
  yard: { deckRoads: 2 },
  steps,
  ...more
});

describe('a walkthrough', () => {
  test('comes in with defaults filled in, and goes out and in again the same', () => {
    const read = admitWalk(walk());
    expect(read.steps[0]).toMatchObject({
      show: ['rows'],
      scene: { deck: 0, controller: 0.6 }
    });
    expect(read.steps[0]?.call?.question.about).toEqual(['Plover']);
    expect(admitWalk(JSON.parse(JSON.stringify(walkFile(read))))).toEqual(read);
  });

  test.each([
    ['an unknown key', walk({ script: 'x' }), /unknown key 'script'/],
    ['no step', walk({}, []), /one step at least/],
    ['too many steps', walk({}, Array(MAX_STEPS + 1).fill(step)), /at most 40 steps/],
    [
      'a road that is not there',
      walk({}, [{ ...step, scene: { switches: { F: 'on' } } }]),
      /steps › 0 › scene › switches › F/
    ],
    [
      'two questions in one',
      walk({}, [{ ...step, call: { ...step.call, falls: ['Plover'] } }]),
      /steps › 0 › call/
    ]
  ])('with %s is refused, and the place is named', (_, value, words) => {
    expect(() => admitWalk(value)).toThrow(words);
  });
});
