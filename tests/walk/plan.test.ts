import { describe, expect, test } from 'vitest';
import { countWords } from '../../src/lib/yard';
import { optionsOf, plans, rightOf, type Round } from '../../src/lib/walk';
import { planned, rounds } from './planned';

describe.each(planned)('the call %s of a plan', (id) => {
  const round = rounds.get(id) as Round;

  test('is in the lessons, with three or four options, a twin and a place to look at', () => {
    expect(round, id).toBeDefined();
    for (const asking of [round, round.twin as NonNullable<Round['twin']>]) {
      expect([3, 4]).toContain(optionsOf(asking.question).length);
      expect(countWords(asking.ask)).toBeLessThanOrEqual(35);
      expect(rightOf(asking), 'the engine answers it').toBeGreaterThanOrEqual(0);
    }
    expect(round.look.length).toBeGreaterThan(0);
  });
});

test('a round takes four to six minutes, with some left for the bench', () => {
  for (const { calls, minutes, id } of plans) {
    expect(minutes / calls.length, id).toBeGreaterThanOrEqual(6);
    expect(new Set(calls).size).toBe(calls.length);
  }
});

test('the right answers of a plan are not all at one letter', () => {
  for (const { calls } of plans) {
    const places = calls.map((id) => rightOf(rounds.get(id) as Round));
    expect(new Set(places).size).toBeGreaterThan(1);
  }
});
