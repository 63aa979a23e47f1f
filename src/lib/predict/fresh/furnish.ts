import { joinWords, locoNames } from '../../yard';
import type { Chance } from './chance';
import type { Cause, Miss } from './family';

type Way = 'west' | 'east';

/** Letters of the first storage roads, six at most. */
export const letters = (count: number): readonly string[] => [...'ABCDEF'].slice(0, count);

/** A knob setting that drives every loco well: its words, and the way it says. */
export function knob(chance: Chance): { readonly setting: string; readonly way: Way } {
  const way = chance.pick(['west', 'east'] as const);
  return { setting: `${60 + chance.upTo(36)}% ${way}`, way };
}

/** A loco on a deck road, somewhere about the middle. */
export const standing = (chance: Chance, road: string, middleMm = 600) => ({
  road,
  atMm: middleMm - 150 + 25 * chance.upTo(13),
  faces: chance.pick(['west', 'east'] as const)
});

/** Roads so long that a loco in the middle meets no end while it is watched. */
export const LONG_MM = 2800;

/** Some locos by name, in any order. */
export function someLocos(chance: Chance, count: number): readonly string[] {
  const names = chance.some(locoNames, count);
  return chance.odds(50) ? names : [...names].reverse();
}

/** The loco asked about, and most times another one on another road. */
export function locos(chance: Chance, all: readonly string[], mine: string, middleMm?: number) {
  const [loco, other] = someLocos(chance, 2) as [string, string];
  const rest = all.filter((road) => road !== mine);
  const placed = { [loco]: standing(chance, mine, middleMm) };
  if (rest.length > 0 && chance.odds(85))
    placed[other] = standing(chance, chance.pick(rest), middleMm);
  return { loco, placed };
}

/** Each road's toggle, on or off by chance. */
export const toggles = (chance: Chance, all: readonly string[]): Record<string, boolean> =>
  Object.fromEntries(all.map((road) => [road, chance.odds(50)]));

/** Words for a call that says west or east or stays of a loco. */
export const wayCause =
  (words: { readonly holds: (miss: Miss) => Cause; readonly runs: (miss: Miss) => Cause }) =>
  (miss: Miss): Cause => {
    if (miss.answer === 'stays') return words.holds(miss);
    if (miss.option === 'stays') return words.runs(miss);
    return {
      idea: 'M17',
      at: miss.id,
      say: 'The rails decide the way, whatever end leads: plus is on its right.'
    };
  };

/** Which toggles are on, in words. */
export function togglesSay(switches: Readonly<Record<string, boolean>>): string {
  const all = Object.keys(switches);
  const on = all.filter((road) => switches[road]);
  if (on.length === 0) return all.length > 1 ? 'All toggles are off.' : `Toggle ${all[0]} is off.`;
  if (on.length === 1) return `Toggle ${on[0]} is on.`;
  return on.length === all.length
    ? 'All toggles are on.'
    : `Toggles ${joinWords(on, 'and')} are on.`;
}
