import { describe, expect, test } from 'vitest';
import { answers, type QuestionInput } from './build';

const scene = { switches: { A: true }, controller: 1 };
const behind = (place: string): [string, string] => [place, 'return'];
const lamp = {
  'behind toggle A': behind('toggle A rail side'),
  'at feed rail A': behind('feed rail A'),
  'at the feed': behind('feed')
};
const toggle = { stuckOpen: 'toggle A' };
const feed = { wireOff: 'feed dropper A' };
const back = { wireOff: 'return dropper A' };

describe('a question which test halves the suspects', () => {
  // Worked out by hand: dark behind an open place, bright before it.
  test('of four places in a row the lamp goes between the second and the third', () => {
    const of = { toggle, feed, back, wire: { wireOff: 'return wire' } };
    expect(answers({ halve: { of, lamp } }, { scene })).toEqual({
      'the best test': 'at feed rail A'
    });
  });

  test('two tests that are as good as each other are no answer', () => {
    expect(() => answers({ halve: { of: { toggle, feed, back }, lamp } }, { scene })).toThrow(
      "without the engine's answer 'behind toggle A and at feed rail A'"
    );
  });
});

describe('a question which fault fits the readings', () => {
  const of = { toggle, feed, back };
  const ask = (shows: 'dark' | 'bright', fault: QuestionInput['do']) =>
    answers(
      {
        do: fault,
        fault: {
          of,
          tests: [
            { lamp: behind('toggle A rail side'), shows },
            { lamp: behind('feed rail A'), shows: 'dark' }
          ]
        }
      },
      { scene }
    );

  test('bright before the dropper, dark behind it: the dropper', () => {
    expect(ask('bright', { faults: [feed] })).toEqual({ 'the fault': 'feed' });
    expect(ask('dark', { faults: [toggle] })).toEqual({ 'the fault': 'toggle' });
  });

  test('a reading that the board does not show is no answer', () => {
    expect(() => ask('dark', { faults: [feed] })).toThrow(
      "the engine's answer 'no dark lamp at toggle A rail side and return'"
    );
  });
});
