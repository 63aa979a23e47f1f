import { describe, expect, test } from 'vitest';
import { suspectsOf, testsOf } from '../../src/lib/hunt';
import { explainedOf, standOf, testTold } from '../../src/lib/ui/hunting/huntStand';
import { practiceTold, practised, resumed } from '../../src/lib/ui/hunting/practiceStand';
import { seenWords, symptomKinds } from '../../src/lib/ui/hunting/symptoms';
import { yardOf } from '../yard/build';

const small = yardOf({ deckRoads: 2, stablingRoads: 1, lamps: 'own' });
const tests = testsOf(small);
const idOf = (begin: string): string => tests.find(({ id }) => id.startsWith(begin))?.id ?? '';

describe('symptomKinds(tests)', () => {
  const kinds = symptomKinds(tests.map(testTold));

  test('each case is an outcome that its test can show', () => {
    const cases = kinds.flatMap((kind) => kind.cases);
    expect(cases.length).toBeGreaterThan(20);
    const amiss = cases.filter(
      ({ test: id, outcome }) =>
        !tests.find((each) => each.id === id)?.outcomes.some((each) => each.id === outcome)
    );
    expect(amiss).toEqual([]);
  });

  test('what was seen is told with its road and its stop', () => {
    const dead = kinds.find(({ id }) => id === 'still');
    const here = dead?.cases.find(({ road }) => road === 'B');
    expect(dead && here && seenWords(dead, here)).toBe(
      'A loco stands still on a road that is on: road B, with the deck at B.'
    );
    expect(kinds.map(({ id }) => id)).toEqual(
      'still slow,wrong way,limit,off,other,pin,joint,dark,burnt'.replace(' ', ',').split(',')
    );
  });
});

describe('standOf(yard, hunt)', () => {
  const rail = idOf('lamp feed rail A to return, own A');
  const tag = idOf('lamp feed tag A to return, own A');

  test('dark at the rail and bright at the tag: suspects, why others are out, what is next', () => {
    const told = [
      { test: rail, outcome: 'dark' },
      { test: tag, outcome: 'bright' }
    ];
    const stand = standOf(small, { wrong: 0, told });
    expect(stand.likely.map(({ name }) => name)).toContain('wireOff: feed dropper A');
    expect(stand.likely.map(({ words }) => words).join()).not.toMatch(/ of \d+ Ω/);
    expect(stand.open).toBeLessThan(stand.all);
    expect(stand.out.reduce((sum, { count }) => sum + count, 0)).toBe(stand.all - stand.open);
    expect(stand.test).not.toBeUndefined();
    expect(stand.means.some(({ count }) => count > 0 && count < stand.open)).toBe(true);
    expect(stand.proof?.outcome).toBe('it is bright');
    expect(stand.proof?.test).toContain('feed rail A');
  });

  test('another test is weighed as the advised one is', () => {
    const stand = standOf(small, { wrong: 0, told: [], test: rail });
    expect([stand.test, stand.isAdvice]).toEqual([rail, false]);
    expect(stand.means.map(({ outcome }) => outcome)).toEqual(['dark', 'dim', 'bright']);
  });

  test('readings of another yard are kept apart; those that nothing explains say so', () => {
    const lost = standOf(small, { wrong: 0, told: [{ test: 'run Z', outcome: 'still' }] });
    expect([lost.lost, lost.told]).toEqual([1, []]);
    const told = [
      { test: rail, outcome: 'bright' },
      { test: idOf('lamp feed to return, own A'), outcome: 'dark' }
    ];
    expect(standOf(small, { wrong: 0, told })).toMatchObject({
      isUnexplained: true,
      test: undefined,
      named: []
    });
    expect(standOf(small, { wrong: 0.1, told }).test).not.toBeUndefined();
    const { wrong, words } = explainedOf(small, { wrong: 0, told });
    // A short across the rails leaves the terminals dead, so either reading may be the odd one.
    expect(wrong.map(({ index }) => index)).toEqual([0, 1]);
    expect(words).toMatch(/pairs? of faults/);
  });
});

describe('resumed(yard, kept)', () => {
  const asks = [
    { do: 'begin', level: 3, seed: 5 },
    { do: 'try', test: idOf('run A, own A') },
    { do: 'name', name: suspectsOf(small)[1]?.name ?? '' },
    { do: 'try', test: idOf('volts feed rail A to return, own A') }
  ] as const;
  const done = asks.reduce<ReturnType<typeof practised> | undefined>(
    (before, ask) => practised(small, before, ask),
    undefined
  );
  if (!done) throw new Error('No practice hunt.');
  const told = practiceTold(done);
  const { level, seed, seen, made, guesses, isGivenUp } = told;
  const kept = {
    level,
    seed,
    seen,
    made: made.map((each) => ({ ...each })),
    guesses: guesses.map(({ name, isRight, after }) => ({ name, isRight, after })),
    isGivenUp,
    isLeft: false
  };

  test('goes on where it was left, reading by reading', () => {
    expect(made.map(({ figure }) => figure !== undefined)).toEqual([false, true]);
    const again = resumed(small, JSON.parse(JSON.stringify(kept)) as typeof kept);
    expect(again && practiceTold(again)).toEqual(told);
  });

  test('a yard that has changed, a test or suspect that is gone, a reading that was another: none of them goes on', () => {
    const other = yardOf({ deckRoads: 4, stablingRoads: 2 });
    const [first, second] = kept.made;
    if (!first || !second) throw new Error('Two tests were made.');
    expect(resumed(other, kept)).toBeUndefined();
    const gone = { test: 'run Z, own Z', outcome: 'still' };
    expect(resumed(small, { ...kept, made: [first, gone] })).toBeUndefined();
    const named = { name: 'gremlins', isRight: false, after: 0 };
    expect(resumed(small, { ...kept, guesses: [named] })).toBeUndefined();
    const late = { ...(kept.guesses[0] ?? named), after: 9 };
    expect(resumed(small, { ...kept, guesses: [late] })).toBeUndefined();
    const misread = { ...second, figure: '99.9 V' };
    expect(resumed(small, { ...kept, made: [first, misread] })).toBeUndefined();
  });
});
