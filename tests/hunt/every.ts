import { suspects, suspectsOf, named, type Suspect } from '../../src/lib/hunt';
import type { Yard } from '../../src/lib/yard';
import { yardOf } from '../yard/build';
import { follow, halving, isNamed, seeded } from './drive';

export type Size = readonly [deckRoads: number, stablingRoads: number];

/** Yards of which every fault is hunted. */
export const whole: readonly Size[] = [
  [2, 1],
  [5, 4],
  [12, 6]
];

export const yardWith = ([deckRoads, stablingRoads]: Size): Yard =>
  yardOf({ deckRoads, stablingRoads, lamps: 'own' });

export const nameOf = ([deck, stabling]: Size): string => `${String(deck)}+${String(stabling)}`;

export const mean = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0) / all.length;

/** Every single fault of a yard hunted by the advice, and by halving. */
export function everyFault(size: Size) {
  const yard = yardWith(size);
  const all = suspectsOf(yard);
  const hunts = all.map((suspect) => follow(yard, suspect, { seed: 1, wrong: 0 }));
  const counts = hunts.map((hunt) => hunt.told.length);
  const halved = all.map((suspect) => halving(yard, suspect));
  return {
    yard: nameOf(size),
    suspects: all.length,
    named: hunts.filter((hunt, index) => isNamed(hunt, all[index] as Suspect)).length,
    set: mean(hunts.map((hunt) => named(hunt).length)),
    tests: mean(counts),
    worst: Math.max(...counts),
    halving: mean(halved),
    'halving, worst': Math.max(...halved),
    log2: Math.log2(all.length)
  };
}

/** Seeded hunts with one reading in ten wrong and a meter's error: how often the truth is among the first three. */
export function misread(size: Size, hunts: number) {
  const yard = yardWith(size);
  const all = suspectsOf(yard);
  const chance = seeded(11);
  const each = Array.from({ length: hunts }, (_, seed) => {
    const suspect = all[Math.floor(chance() * all.length)] as Suspect;
    const hunt = follow(yard, suspect, { seed, wrong: 0.1 });
    const ranked = suspects(hunt);
    const mine = ranked.find((one) => one.suspect === suspect)?.chance ?? 0;
    const likelier = ranked.filter(({ chance: its }) => its > mine * (1 + 1e-9));
    return { kept: isNamed(hunt, suspect) || likelier.length < 3, tests: hunt.told.length };
  });
  return {
    yard: nameOf(size),
    hunts,
    'among the first three': each.filter(({ kept }) => kept).length,
    tests: mean(each.map(({ tests }) => tests))
  };
}
