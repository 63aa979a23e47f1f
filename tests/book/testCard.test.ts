import { describe, expect, test } from 'vitest';
import { reads, testLines } from '../../src/lib/book';
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

describe('the test card', () => {
  test('which single faults no line of it shows', () => {
    const yard = yardOf({ deckRoads: 2, stablingRoads: 1 });
    const missed = faultsOf(yard).filter((fault) => !found(yard, fault));
    console.log(missed.map((fault) => faultName(fault)).join('\n'), faultsOf(yard).length);
    expect(missed.length).toBe(0);
  });
});
