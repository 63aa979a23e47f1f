import {
  beginHunt,
  isUnexplained,
  meanings,
  misleads,
  named,
  nextTest,
  pairsOf,
  pairsWords,
  suspects,
  testsOf,
  told,
  wrongReadings,
  type Hunt,
  type Meaning,
  type Suspect,
  type Suspected,
  type Test
} from '../../hunt';
import { once, type Yard } from '../../yard';
import type {
  ExplainedTold,
  HuntAsked,
  MeaningTold,
  OutTold,
  StandTold,
  SuspectTold,
  TestTold
} from './huntTold';

/** Most suspects named in each list. */
const FEW = 3;
const LISTED = 12;
/** From this share on a suspect still fits, although a reading speaks against it. Source: common practice. */
const FITS = 0.01;

export const testsById = once(
  (yard: Yard): ReadonlyMap<string, Test> => new Map(testsOf(yard).map((test) => [test.id, test]))
);

const pairOf = ({ id, moment }: Test) =>
  moment.pairs.find((pair) => id.includes(` ${pair.join(' to ')},`));

/** A test as the page shows it. */
export const testTold = (test: Test): TestTold => ({
  id: test.id,
  kind: test.kind,
  moment: test.moment.id,
  set: test.moment.words,
  words: test.words,
  place: test.place,
  cost: test.cost,
  outcomes: test.outcomes.map(({ id, words }) => ({ id, words, mind: misleads(test, id) })),
  pair: pairOf(test),
  roads: test.moment.roads,
  others: test.moment.others,
  isDead: ['unplugged', 'plug out'].includes(test.moment.kind),
  unit: test.figure?.unit
});

/** A bad joint's ohms are those of a sample: at the real yard they are not known. */
export const wordsOf = ({ words }: Suspect): string => words.replace(/ of [\d.]+ Ω/, '');

export const suspectTold = (suspect: Suspect, chance: number): SuspectTold => ({
  name: suspect.name,
  words: wordsOf(suspect),
  repair: suspect.repair,
  chance
});

const meaningTold = ({ outcome, stay }: Meaning): MeaningTold => ({
  outcome: outcome.id,
  count: stay.length,
  first: stay.slice(0, FEW).map(wordsOf)
});

const fits = ({ chance, against }: Suspected): boolean =>
  chance > 0 && (against.length === 0 || chance >= FITS);

/** Those that are out, under the first reading that speaks against them. */
function outTold(hunt: Hunt, ranked: readonly Suspected[]): readonly OutTold[] {
  const out = ranked.filter((each) => !fits(each) && each.against.length > 0);
  return hunt.told.flatMap(({ test: id, outcome }): readonly OutTold[] => {
    const mine = out.filter(({ against }) => against[0]?.test.id === id);
    const test = mine[0]?.against[0]?.test;
    if (!test) return [];
    return [
      {
        test: `${test.moment.words} ${test.words}`,
        outcome: test.outcomes.find((each) => each.id === outcome)?.words ?? outcome,
        count: mine.length,
        some: mine.slice(0, LISTED).map(({ suspect, against }) => ({
          words: wordsOf(suspect),
          expected: against[0]?.expected ?? ''
        }))
      }
    ];
  });
}

/** The last reading that a sound yard would not give, and what it would give. */
function proofOf(ranked: readonly Suspected[]): StandTold['proof'] {
  const sound = ranked.find(({ suspect }) => suspect.fault === undefined);
  const last = sound?.against.at(-1);
  return last && { test: `${last.test.moment.words} ${last.test.words}`, outcome: last.expected };
}

/** The readings whose tests the yard has. */
const thereIn = (yard: Yard, asked: HuntAsked) =>
  asked.told.filter(({ test, outcome }) =>
    testsById(yard)
      .get(test)
      ?.outcomes.some(({ id }) => id === outcome)
  );

const huntFrom = (yard: Yard, wrong: number, there: HuntAsked['told']): Hunt =>
  there.reduce((before, { test, outcome }) => told(before, test, outcome), beginHunt(yard, wrong));

/** What else could explain readings which no single fault does. */
export function explainedOf(yard: Yard, asked: HuntAsked): ExplainedTold {
  const hunt = huntFrom(yard, asked.wrong, thereIn(yard, asked));
  const found = pairsOf(hunt);
  return {
    wrong: wrongReadings(hunt).map(({ index, test, outcome, suspects: all }) => ({
      index,
      test: test.words,
      outcome: test.outcomes.find(({ id }) => id === outcome)?.words ?? outcome,
      count: all.length,
      first: all.slice(0, FEW).map(wordsOf)
    })),
    words: pairsWords(found),
    pairs: found.pairs.slice(0, FEW).map(([one, other]) => [wordsOf(one), wordsOf(other)])
  };
}

/** How a hunt stands in a yard: readings of tests that the yard no longer has are left out. */
export function standOf(yard: Yard, asked: HuntAsked): StandTold {
  const tests = testsById(yard);
  const there = thereIn(yard, asked);
  const hunt = huntFrom(yard, asked.wrong, there);
  const ranked = suspects(hunt);
  const unexplained = isUnexplained(hunt) && ranked.every(({ chance }) => chance === 0);
  const chanceOf = new Map(ranked.map(({ suspect, chance }) => [suspect.name, chance]));
  const own = asked.test === undefined ? undefined : tests.get(asked.test);
  const test = own ?? (unexplained ? undefined : nextTest(hunt)?.test);
  return {
    told: there,
    lost: asked.told.length - there.length,
    test: test?.id,
    means: test ? meanings(hunt, test).map(meaningTold) : [],
    isAdvice: own === undefined,
    open: ranked.filter(fits).length,
    all: ranked.length,
    likely: ranked
      .filter(fits)
      .slice(0, LISTED)
      .map(({ suspect, chance }) => suspectTold(suspect, chance)),
    out: outTold(hunt, ranked),
    named: test
      ? []
      : named(hunt).map((suspect) => suspectTold(suspect, chanceOf.get(suspect.name) ?? 0)),
    isUnexplained: unexplained,
    proof: proofOf(ranked)
  };
}
