import { describe, expect, test } from 'vitest';
import { checks, roadVolts } from '../../src/lib/checks';
import { strandedSizes, wireAreaMm2 } from '../../src/lib/tables';
import { locoNamed, roads, type YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

/** Three roads, a deck wired for good: two long wires, two links out and two home, a dropper for each rail. */
const counts = { main: 2, link: 4, dropper: 6 };
const words = {
  main: 'wires to and from the controller',
  link: 'links of feed and return',
  dropper: 'droppers'
};
type Wires = Required<NonNullable<YardInput['wires']>>;
const kinds = ['main', 'link', 'dropper'] as const;
const avocet = locoNamed('Avocet');

const yardWith = (wires: YardInput['wires']) => yardOf({ deckRoads: 3, plug: false, wires });

/** Every choice of three sizes, none thinner than now, tried on every road; the one with least copper. */
function bruteForce(lengths: Readonly<Record<(typeof kinds)[number], number>>, dropShare: number) {
  let best: { readonly sizes: readonly string[]; readonly copper: number } | undefined;
  for (const main of strandedSizes)
    for (const link of strandedSizes)
      for (const dropper of strandedSizes) {
        const sizes = [main, link, dropper];
        const wires = Object.fromEntries(
          kinds.map((kind, index) => [kind, { size: sizes[index], lengthM: lengths[kind] }])
        ) as Partial<Wires>;
        const copper = kinds.reduce(
          (sum, kind, index) =>
            sum + wireAreaMm2(sizes[index] as string) * lengths[kind] * counts[kind],
          0
        );
        const yard = yardWith(wires);
        const fits = roads(yard).every(
          (road) => roadVolts(yard, road, avocet).lost <= dropShare * 12
        );
        if (fits && (!best || copper < best.copper)) best = { sizes, copper };
      }
  return best?.sizes;
}

describe('the cheapest change of wire', () => {
  const cases = [
    { lengths: { main: 30, link: 0.3, dropper: 1.5 }, dropShare: 0.1 },
    { lengths: { main: 10, link: 5, dropper: 8 }, dropShare: 0.1 },
    { lengths: { main: 4, link: 20, dropper: 3 }, dropShare: 0.1 },
    { lengths: { main: 15, link: 6, dropper: 12 }, dropShare: 0.06 },
    { lengths: { main: 40, link: 20, dropper: 40 }, dropShare: 0.03 }
  ];

  test.each(cases)(
    'with $lengths and a limit of $dropShare is what brute force finds',
    ({ lengths, dropShare }) => {
      const thin = Object.fromEntries(
        kinds.map((kind) => [kind, { size: '7/0.2', lengthM: lengths[kind] }])
      );
      const running = checks.find(({ id }) => id === 'running');
      const [worst] = running?.run(yardWith(thin), { dropShare }) ?? [];
      expect(worst?.grade).toBe('think');
      const sizes = bruteForce(lengths, dropShare);
      kinds.forEach((kind, index) => {
        const size = sizes?.[index] ?? '7/0.2';
        const told = `${size} wire instead of 7/0.2 for the ${words[kind]} (${(lengths[kind] * counts[kind]).toFixed(1)} m)`;
        expect(worst?.cure.toLowerCase().includes(told.toLowerCase())).toBe(size !== '7/0.2');
      });
      expect(worst?.cure.startsWith('No usual wire')).toBe(sizes === undefined);
    }
  );
});
