import { describe, expect, test } from 'vitest';
import { reads, testCard, testLines } from '../../src/lib/book';
import { faultName, faultsOf, type Fault, type Yard } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

/** A reading is changed when a 2 % meter can tell. */
const differs = (before: number, after: number): boolean =>
  before !== after && !(Math.abs(after - before) <= Math.max(0.02 * Math.abs(before), 0.1));

const found = (yard: Yard, fault: Fault): boolean =>
  testLines(yard)
    .flatMap(({ lines }) => lines)
    .some((line) => {
      const faulty = { ...line, scene: { ...line.scene, faults: [fault] } };
      return differs(reads(yard, line), reads(yard, faulty));
    });

/** Faults that stand beside a sound way round: another contact of the plug, the other way round a ring. */
const hasWayRound = (fault: Fault): boolean =>
  /plug return|halfHome|link|deck return/.test(JSON.stringify(fault));

describe('the test card', () => {
  test('shows every single fault, but for a doubled contact of the return', () => {
    const yard = yardOf({ deckRoads: 2, stablingRoads: 1 });
    const missed = faultsOf(yard).filter((fault) => !found(yard, fault));
    expect(missed.map(faultName)).toEqual([
      'stuckOpen: plug return 1',
      'stuckOpen: plug return 2',
      'halfHome: the last 1 of the plug',
      'highOhms: plug return 1',
      'highOhms: plug return 2'
    ]);
  });

  test('in a ring it misses only what has another way round', () => {
    const yard = yardOf({ deckRoads: 3, return: 'ring', plug: { returnContacts: 1 } });
    const missed = faultsOf(yard).filter((fault) => !found(yard, fault));
    expect(missed.length).toBeGreaterThan(0);
    expect(missed.filter((fault) => !hasWayRound(fault)).map(faultName)).toEqual([]);
  });

  test('lists by hand what no reading at rest shows', () => {
    const hands = testCard.make(yardOf({ deckRoads: 2, stablingRoads: 1 })).tables.at(-1);
    expect(hands?.title).toBe('By hand');
    expect(hands?.rows.map(([what]) => what).join(' ')).toMatch(
      /pin 1 mm.*ring.*each return contact/s
    );
  });
});
