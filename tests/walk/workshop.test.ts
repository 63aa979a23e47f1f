import { describe, expect, test } from 'vitest';
import {
  acted,
  admitWorkshop,
  begin,
  heard,
  historyFrom,
  quietWord,
  step,
  takenBack,
  votesOn,
  wordFor,
  type Act,
  type Known,
  type Stage,
  type Stand
} from '../../src/lib/walk';

const twin = {} as Known['twin'];
const rounds: readonly Known[] = [
  { id: 'one', options: 3, right: 2, twin },
  { id: 'two', options: 4, right: 0, twin: undefined }
];
const [one] = rounds as [Known, Known];

const does = (acts: readonly Act[], from: Stand = begin): Stand =>
  acts.reduce((stand, act) => step(stand, act, rounds), from);
const next: Act = { kind: 'next' };
const back: Act = { kind: 'back' };
const vote = (option: number, by: 1 | -1 = 1): Act => ({ kind: 'vote', option, by });
const digits = (text: string): readonly Act[] =>
  [...text].map((digit) => ({ kind: 'digit', digit: Number(digit) }));

/** The stages met with `next` from a stand to the next round. */
function wayFrom(stand: Stand): readonly Stage[] {
  const way: Stage[] = [];
  for (let now = stand; now.round === stand.round; now = step(now, next, rounds)) {
    way.push(now.stage);
  }
  return way;
}

/** The first vote on the first call, typed. */
const voted = (...tally: readonly number[]): Stand =>
  does([next, next, ...tally.flatMap((votes, option) => [vote(option), ...digits(String(votes))])]);

describe('quietWord(tally, right): bounds of Crouch & Mazur 2001, 35 and 70 % right', () => {
  test.each([
    [[13, 0, 7], 'discuss'],
    [[14, 0, 6], 'hint'],
    [[6, 0, 14], 'discuss'],
    [[5, 0, 15], 'go on'],
    [[12, 0, 0], 'hint'],
    [[0, 0, 12], 'go on']
  ] as const)('of %j where the last is right: %s', (tally, word) => {
    expect(quietWord(tally, 2)).toBe(word);
  });

  test.each([
    [[4, 4, 3], 'discuss', 'a third on two answers'],
    [[0, 2, 4], 'discuss', 'just a third on the other'],
    [[1, 2, 8], 'go on', 'less than a third on each other answer'],
    [[8, 2, 1], 'hint', 'nearly all on a wrong one']
  ] as const)('of fewer than 12, %j: %s, %s', (tally, word, why) => {
    expect(quietWord(tally, 2), why).toBe(word);
  });

  test('fewer than 6 are not counted', () => {
    expect(quietWord([0, 0, 5], 2)).toBeUndefined();
    expect(quietWord([0, 0, 6], 2)).toBe('go on');
  });
});

describe('step(stand, act, rounds)', () => {
  test('a round goes from set to its twin; one without a twin ends with why', () => {
    expect(wayFrom(begin)).toEqual([
      'set',
      'predict',
      'first',
      'talk',
      'second',
      'throw',
      'seen',
      'why',
      'check',
      'checked'
    ]);
    expect(wayFrom({ ...begin, round: 1 }).at(-1)).toBe('why');
  });

  test('after a clear first vote the switch is thrown at once, and back leads the same way', () => {
    const clear = voted(1, 1, 18);
    expect(wordFor(clear, one)).toBe('go on');
    expect(wayFrom(clear).slice(0, 3)).toEqual(['first', 'throw', 'seen']);
    expect(does([next, back], clear).stage).toBe('first');
  });

  test('where few are right the hint comes with the talk', () => {
    expect(does([next], voted(9, 9, 2))).toMatchObject({ stage: 'talk', hint: true });
    expect(does([next], voted(9, 2, 9))).toMatchObject({ stage: 'talk', hint: false });
  });

  test('back undoes next at every stage of every round', () => {
    let stand = begin;
    const path = [stand];
    while (stand.round < rounds.length) path.push((stand = step(stand, next, rounds)));
    for (const before of path.slice(0, -1).reverse()) {
      stand = step(stand, back, rounds);
      expect([stand.round, stand.stage]).toEqual([before.round, before.stage]);
    }
    expect(step(stand, back, rounds)).toEqual(begin);
  });

  test('letters add one, with −1 they take one away, digits after a letter give the number', () => {
    const at = does([next, next]);
    const typed = (acts: readonly Act[]) => votesOn(does(acts, at), one)[0];
    expect(typed([vote(0), vote(0), vote(2)])).toEqual([2, 0, 1]);
    expect(typed([vote(0), vote(0, -1), vote(0, -1)])).toEqual([0, 0, 0]);
    expect(typed([vote(1), ...digits('12'), vote(2), ...digits('3')])).toEqual([0, 12, 3]);
    expect(typed([vote(1), { kind: 'more' }, { kind: 'more' }, { kind: 'less' }])).toEqual([
      0, 2, 0
    ]);
    expect(typed([vote(3), ...digits('7')])).toEqual([0, 0, 0]);
    expect(typed([vote(0), ...digits('99999')])).toEqual([200, 0, 0]);
  });

  test('the second vote leaves the first as it was', () => {
    const second = does([next, next, vote(1)], voted(9, 2, 9));
    expect(second.stage).toBe('second');
    expect(votesOn(second, one)).toEqual([
      [9, 2, 9],
      [0, 1, 0]
    ]);
  });

  test('nothing is counted outside a vote', () => {
    for (const stage of ['set', 'predict', 'talk', 'throw', 'seen', 'why', 'check'] as const) {
      const stand = { ...begin, stage };
      expect(does([vote(0), ...digits('4')], stand)).toEqual(stand);
    }
  });

  test('the switch is thrown only when the room was asked, then as often as wanted', () => {
    for (const stage of ['set', 'predict', 'first', 'talk', 'second'] as const) {
      expect(does([{ kind: 'throw' }], { ...begin, stage }).stage).toBe(stage);
    }
    const seen = does([{ kind: 'throw' }], { ...begin, stage: 'throw' });
    expect(seen).toMatchObject({ stage: 'seen', throws: 0 });
    expect(does([{ kind: 'throw' }], seen)).toMatchObject({ stage: 'seen', throws: 1 });
    expect(does([{ kind: 'throw' }], { ...begin, stage: 'check' }).stage).toBe('checked');
  });

  test('reset leads to the beginning of this call and keeps its votes; end leads past the last one', () => {
    const far = { ...voted(9, 2, 9), stage: 'why' as const, hint: true, throws: 3 };
    const again = does([{ kind: 'reset' }], far);
    expect(again).toMatchObject({ round: 0, stage: 'set', hint: false, throws: 0 });
    expect(votesOn(again, one)[0]).toEqual([9, 2, 9]);
    const over = does([{ kind: 'end' }], far);
    expect(over.round).toBe(rounds.length);
    expect(does([next, { kind: 'throw' }, vote(0)], over)).toEqual(over);
    expect(does([back], over)).toMatchObject({ round: 1, stage: 'why' });
  });
});

describe('a workshop that is kept', () => {
  const fresh = historyFrom({ past: [], now: begin }, rounds);
  const play = (acts: readonly Act[]) =>
    acts.reduce((history, act) => acted(history, act, rounds), fresh);

  test('every act can be taken back, and an act that means nothing is none', () => {
    const history = play([next, next, vote(0), ...digits('7'), { kind: 'throw' }]);
    const counts = [];
    for (let now = history; now.past.length > 0; now = takenBack(now)) {
      counts.push(votesOn(takenBack(now).now, one)[0][0]);
    }
    expect(counts).toEqual([1, 0, 0, 0]);
  });

  test('votes from phones add to those typed, and no act taken back loses them', () => {
    const told = heard(play([next, next, vote(0)]), one, 0, [0, 5, 6]);
    expect(votesOn(told.now, one)[0]).toEqual([1, 5, 6]);
    expect(votesOn(takenBack(told).now, one)[0]).toEqual([0, 5, 6]);
  });

  test('it comes back from the device as it was, at whatever key it was left', () => {
    const keys: readonly Act[] = [next, next, vote(1), ...digits('12'), next, next, vote(2), next];
    for (let count = 0; count <= keys.length; count++) {
      const { past, now } = play(keys.slice(0, count));
      const rest = { version: 1, plan: 'whole', begunMs: 5, showsClock: true };
      const text = JSON.stringify({ ...rest, past, now });
      const kept = historyFrom(admitWorkshop(JSON.parse(text)), rounds);
      expect(kept.now).toEqual(now);
      expect(kept.past).toHaveLength(past.length);
    }
  });

  test('what does not have the form is refused; votes on other options are left out', () => {
    const whole = { version: 1, plan: 'whole', begunMs: 5, showsClock: true, past: [], now: begin };
    const stages = { ...whole, now: { ...begin, stage: 'nowhere' } };
    expect(() => admitWorkshop(stages)).toThrow(/stage/);
    const many = { ...begin, typed: { one: [[1e9, 0, 0], []] } };
    expect(() => admitWorkshop({ ...whole, now: many })).toThrow(/200|typed/);
    const other = { ...begin, round: 9, typed: { one: [[1], [1]], gone: [[1], [1]] } };
    const { now } = historyFrom(admitWorkshop({ ...whole, now: other }), rounds);
    expect(now).toMatchObject({ round: rounds.length, typed: {} });
  });
});
