import { describe, expect, test } from 'vitest';
import {
  beginHunt,
  isUnexplained,
  named,
  nextTest,
  suspects,
  suspectsOf,
  testsOf,
  told,
  undone,
  type Suspect
} from '../../src/lib/hunt';
import type { Yard } from '../../src/lib/yard';
import { yardOf } from '../yard/build';
import { follow, halving, isNamed, seeded } from './drive';
import { mean, misread } from './every';

const small = yardOf({ deckRoads: 2, stablingRoads: 1, lamps: 'own' });
const quay = yardOf({ deckRoads: 5, stablingRoads: 4, lamps: 'own' });

/** Follows the advice for each of these suspects; the numbers of tests. */
function hunted(yard: Yard, all: readonly Suspect[]): readonly number[] {
  return all.map((suspect) => {
    const hunt = follow(yard, suspect, { seed: 1, wrong: 0 });
    expect(isNamed(hunt, suspect), `${suspect.name} after ${hunt.told.length}`).toBe(true);
    expect(nextTest(hunt), `${suspect.name}: no test is left`).toBeUndefined();
    return hunt.told.length;
  });
}

describe('nextTest(hunt): following the advice names the fault, or the set that no test tells apart', () => {
  test('every single fault of 2+1, within twice the bound and two, in fewer tests than halving', () => {
    const all = suspectsOf(small);
    const bound = Math.log2(all.length);
    const counts = hunted(small, all);
    const halved = all.map((suspect) => halving(small, suspect));
    console.info(
      `2+1: ${all.length} suspects, ${mean(counts).toFixed(2)} tests on average and ${Math.max(...counts)} at most; halving ${mean(halved).toFixed(2)} and ${Math.max(...halved)}; log2 ${bound.toFixed(2)}`
    );
    expect(Math.max(...counts)).toBeLessThanOrEqual(2 * bound + 2);
    expect(mean(counts)).toBeLessThan(mean(halved));
  });

  test('a seeded share of 5+4, within twice the bound and two', () => {
    const all = suspectsOf(quay);
    const chance = seeded(3);
    const some = all.filter((_, index) => index === 0 || chance() < 0.04);
    const counts = hunted(quay, some);
    const bound = Math.log2(all.length);
    console.info(
      `5+4: ${some.length} of ${all.length}, ${mean(counts).toFixed(2)} tests on average and ${Math.max(...counts)} at most; log2 ${bound.toFixed(2)}`
    );
    expect(some.length).toBeGreaterThan(8);
    expect(Math.max(...counts)).toBeLessThanOrEqual(2 * bound + 2);
  });

  test('one reading in ten wrong: the true fault stays among the first three in 95 of 100 hunts', () => {
    const found = misread([2, 1], 100);
    console.info(JSON.stringify(found));
    const kept = found['among the first three'];
    expect(kept).toBeGreaterThanOrEqual(95);
  });
});

const lampOn = (points: string) =>
  testsOf(small).find(({ id }) => id.startsWith(`lamp ${points}, own A`));

describe('told(hunt, test, outcome)', () => {
  test('a lamp dark at the rail and bright at the tag leaves what lies between', () => {
    const [rail, tag] = [lampOn('feed rail A to return'), lampOn('feed tag A to return')];
    expect(rail?.words).toBe("Hold the lamp to feed rail A and the controller's return.");
    const one = told(beginHunt(small, 0), rail?.id ?? '', 'dark');
    const both = told(one, tag?.id ?? '', 'bright');
    const left = suspects(both).filter(({ chance }) => chance > 0);
    const names = left.map(({ suspect }) => suspect.name);
    expect(names).toContain('wireOff: feed dropper A');
    expect(names).toContain('stuckOpen: toggle A');
    expect(names).not.toContain('wireOff: feed wire');
    expect(names).not.toContain('wireOff: feed dropper B');
    expect(left.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
    const gone = suspects(both).find(({ suspect }) => suspect.name === 'wireOff: feed wire');
    expect(gone?.against.map(({ expected }) => expected)).toEqual(['it stays dark']);
    expect(undone(both)).toEqual(one);
  });

  test('readings that no suspect explains say so', () => {
    const [rail, tag] = [lampOn('feed rail A to return'), lampOn('feed to return')];
    const one = told(beginHunt(small, 0), rail?.id ?? '', 'bright');
    expect(isUnexplained(one)).toBe(false);
    const both = told(one, tag?.id ?? '', 'dark');
    expect(isUnexplained(both)).toBe(true);
    expect(named(both)).toEqual([]);
    expect(nextTest(both)).toBeUndefined();
  });

  test('what a test cannot show, and a test that is not there, are refused', () => {
    const hunt = beginHunt(small);
    expect(() => told(hunt, lampOn('feed to return')?.id ?? '', 'purple')).toThrow(
      /cannot show 'purple': it shows dark, dim, bright/
    );
    expect(() => told(hunt, 'lick it', 'dark')).toThrow("No test 'lick it' in this yard.");
    expect(() => beginHunt(small, 0.5)).toThrow('wrong is 0.5: give a share from 0 to 0.1.');
  });

  test('the advice tells what each outcome would mean', () => {
    const advice = nextTest(beginHunt(small, 0));
    expect(advice?.bits).toBeGreaterThan(0.5);
    expect(advice?.means.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
    expect(advice?.means.every(({ stay }) => stay.length > 0)).toBe(true);
  });
});
