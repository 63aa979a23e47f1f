import { describe, expect, test } from 'vitest';
import {
  beginHunt,
  costOf,
  counselOf,
  guessed,
  hiddenIn,
  isOver,
  isUnexplained,
  nextTest,
  outcomes,
  pairsOf,
  pairsWords,
  practice,
  readySteps,
  review,
  suspectsOf,
  symptomsOf,
  tested,
  testsOf,
  told,
  typed,
  wrongReadings,
  type Level,
  type Practice,
  type Test
} from '../../src/lib/hunt';
import { read } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

const yard = yardOf({ deckRoads: 2, stablingRoads: 1, lamps: 'own' });

const testOf = (start: string): Test => {
  const found = testsOf(yard).find(({ id }) => id.startsWith(start));
  if (!found) throw new Error(`No test '${start}'.`);
  return found;
};

/** A practice hunt made by the advice, until there is none. */
function advised(level: Level, seed: number, from = yard): Practice {
  let hunt = practice(from, level, seed);
  for (let count = 0; count < 60 && !isOver(hunt); count++) {
    const counsel = counselOf(hunt);
    const test = counsel.best()?.test.id;
    const [suspect] = test === undefined ? counsel.names() : [];
    if (test !== undefined) hunt = tested(hunt, test);
    else if (suspect) hunt = guessed(hunt, suspect.name);
    else break;
  }
  return hunt;
}

const wrongIn = ({ guesses }: Practice): number => guesses.filter(({ isRight }) => !isRight).length;
const mean = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0) / all.length;

describe('practice(yard, level, seed)', () => {
  test('the same seed hides the same, other seeds other faults; two at level 3', () => {
    const names = (level: Level, seed: number) =>
      hiddenIn(practice(yard, level, seed)).map(({ name }) => name);
    expect(names(2, 4)).toEqual(names(2, 4));
    const all = Array.from({ length: 12 }, (_, seed) => names(2, seed).join());
    expect(new Set(all).size).toBeGreaterThan(6);
    expect(names(3, 1).length).toBe(2);
    expect(JSON.stringify({ ...practice(yard, 2, 4), yard: '' })).not.toContain(names(2, 4)[0]);
  });

  test.each<Level>([1, 2])('level %i: following the advice finds what is hidden', (level) => {
    for (let seed = 0; seed < 8; seed++) {
      const hunt = advised(level, seed);
      expect(symptomsOf(practice(yard, level, seed))).not.toBe('Nothing shows.');
      expect(isOver(hunt), `seed ${seed}`).toBe(true);
      expect(symptomsOf(hunt)).toBe('Nothing shows.');
      const { yours, best } = review(hunt);
      expect(best).toEqual(yours);
      expect(yours.cost).toBe(costOf(hunt));
    }
  });

  // Of 60 hunts each all were found whole: 2+1 in 2.9 tests and 0.07 wrong repairs, 5+4 in 3.0 and 0.03.
  test.each([
    { size: '2+1', from: yard, count: 5, tests: 5, wrong: 0.2 },
    {
      size: '5+4',
      from: yardOf({ deckRoads: 5, stablingRoads: 4, lamps: 'own' }),
      count: 2,
      tests: 6,
      wrong: 0.5
    }
  ])(
    'level 3: following the advice finds both faults in few tests, fewer wrong repairs: $size',
    ({ from, count, tests, wrong }) => {
      const hunts = Array.from({ length: count }, (_, seed) => advised(3, seed, from));
      hunts.forEach((hunt, seed) => expect(isOver(hunt), `seed ${seed}`).toBe(true));
      expect(mean(hunts.map(({ made }) => made.length))).toBeLessThan(tests);
      expect(mean(hunts.map(wrongIn))).toBeLessThanOrEqual(wrong);
    }
  );

  test('a repair that changed nothing is advised no more, nor what no test tells from it', () => {
    const begun = practice(yard, 1, 0);
    const isRight = (name: string) => guessed(begun, name).guesses[0]?.isRight;
    const wrong = suspectsOf(yard).filter(({ name, fault }) => fault && !isRight(name));
    const after = wrong.reduce((hunt, { name }) => guessed(hunt, name), begun);
    expect(counselOf(begun).open).toBeGreaterThan(counselOf(after).open);
    const names = counselOf(after).names();
    expect(names.length).toBeGreaterThan(0);
    expect(names.every(({ name }) => isRight(name))).toBe(true);
  });

  test('a reading is the engine’s, within a meter’s error of 2 %', () => {
    const id = testOf('volts feed rail A to return, own A').id;
    const hunt = tested(practice(yard, 1, 0), id);
    const { scene } = testOf('volts feed rail A to return, own A').moment;
    const faults = hiddenIn(hunt).flatMap(({ fault }) => fault ?? []);
    const edits = [{ volts: ['feed rail A', 'return'] as [string, string] }];
    const volts = read(yard, { ...scene, faults, edits }).volts('meter volts') ?? 0;
    const shown = Number(hunt.made[0]?.figure?.replace('−', '-').replace(' V', ''));
    expect(Math.abs(shown - volts)).toBeLessThanOrEqual(0.02 * Math.abs(volts) + 0.051);
  });

  test('a wrong repair costs, and the review shows where a better test was at hand', () => {
    const begun = practice(yard, 1, 0);
    const wrong = guessed(begun, 'welded: pin contact 1');
    expect(wrong.guesses[0]?.isRight).toBe(false);
    expect(costOf(wrong)).toBeGreaterThan(costOf(begun));
    const poor = tested(begun, testOf('volts feed to return, own A').id);
    const { steps, weakest } = review(poor);
    expect(weakest).toBe(0);
    expect(steps[0]?.better?.bits).toBeGreaterThan(steps[0]?.bits ?? Infinity);
    expect(() => guessed(begun, 'gremlins')).toThrow("No suspect 'gremlins' in this yard.");
  });
});

describe('typed(test, text)', () => {
  test.each([
    ['7.3 V', 'some'],
    ['-11,8', 'reversed'],
    ['300 mV', 'none'],
    ['12', 'full']
  ])('%s volts: %s', (text, outcome) => {
    const found = typed(testOf('volts feed rail A to return, own A'), text);
    expect('outcome' in found && found.outcome.id).toBe(outcome);
  });

  test.each([
    ['0.4 ohm', 'buzz'],
    ['1.2k', 'ohms'],
    ['OL', 'open'],
    ['2 MΩ', 'open'],
    ['it buzzes', 'buzz']
  ])('%s ohms: %s', (text, outcome) => {
    const found = typed(testOf('ohms feed to feed rail A'), text);
    expect('outcome' in found && found.outcome.id).toBe(outcome);
  });

  test.each([
    ['volts feed rail A to return, own A', '1.01 V', /on the border/],
    ['volts feed rail A to return, own A', '40', /more than the controller gives/],
    ['volts feed rail A to return, own A', '40 ohm', /in volts/],
    ['volts feed rail A to return, own A', 'lots', /type a number such as 7.3 V/],
    ['ohms feed to feed rail A', '12 V', /unplug it/],
    ['ohms feed to feed rail A', '-3', /never below 0/],
    ['lamp feed rail A', '7', /tick one of/]
  ])('%s: %s is told', (start, text, words) => {
    const found = typed(testOf(start), text);
    expect('words' in found && found.words).toMatch(words);
  });
});

describe('what explains readings that no single fault does', () => {
  const shows = (start: string, outcome: string) => ({ test: testOf(start).id, outcome });
  const readings = [
    shows('run A, own A', 'still'),
    shows('run 1, own 1', 'still'),
    shows('run B, own B', 'runs'),
    shows('ohms return rail 1 to return, unplugged own 1', 'ohms'),
    shows('lamp feed tag A to return, own A', 'bright'),
    shows('lamp feed rail A to return, own A', 'dark')
  ];
  const hunt = readings.reduce(
    (h, { test: id, outcome }) => told(h, id, outcome),
    beginHunt(yard, 0)
  );

  test('pairs of faults, tried in the engine', () => {
    expect(isUnexplained(hunt)).toBe(true);
    const found = pairsOf(hunt);
    const names = found.pairs.map((pair) =>
      pair
        .map(({ name }) => name)
        .sort()
        .join(' + ')
    );
    expect(names).toContain('highOhms: return dropper 1 + wireOff: feed dropper A');
    expect(found.tried).toBe(found.of);
    expect(pairsWords(found)).toBe(`${found.pairs.length} pairs of faults explain every reading.`);
    expect(pairsWords({ ...found, of: 99_999 })).toMatch(/Of 99999 pairs .* were tried/);
  });

  test('the one reading that would have to be wrong', () => {
    const three = [
      readings[0],
      readings[2],
      readings[5],
      shows('ohms feed to feed rail A', 'buzz')
    ];
    const odd = three.reduce(
      (h, each) => told(h, each?.test ?? '', each?.outcome ?? ''),
      beginHunt(yard, 0)
    );
    expect(isUnexplained(odd)).toBe(true);
    const wrong = wrongReadings(odd).map(({ test: { id }, suspects }) => [
      id.split(' ')[0],
      suspects.length > 0
    ]);
    expect(wrong).toContainEqual(['ohms', true]);
  });
});

test('readySteps(yard): tells how far it is, and changes no answer', () => {
  const fresh = yardOf({ deckRoads: 2, stablingRoads: 1, lamps: 'own' });
  const steps = [...readySteps(fresh)];
  expect(steps.map(({ done }) => done)).toEqual(steps.map((_, index) => index + 1));
  expect(steps.at(-1)?.done).toBe(steps.at(-1)?.of);
  expect(nextTest(beginHunt(fresh))?.test.id).toBe(nextTest(beginHunt(yard))?.test.id);
  const [row] = outcomes(fresh, testsOf(fresh).slice(0, 1), suspectsOf(fresh));
  expect(row?.length).toBe(suspectsOf(fresh).length);
});
