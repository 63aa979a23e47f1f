import {
  beginHunt,
  named,
  nextTest,
  outcomes,
  suspectsOf,
  testsOf,
  told,
  type Hunt,
  type Suspect,
  type Test
} from '../../src/lib/hunt';
import type { Yard } from '../../src/lib/yard';

/** A seeded source of numbers from 0 to 1: mulberry32, a public-domain generator of the literature. */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** What a test shows of a yard with this suspect, as its shares fall; now and then misread. */
export function shown(
  yard: Yard,
  test: Test,
  suspect: Suspect,
  { chance, wrong }: { readonly chance: () => number; readonly wrong: number }
): string {
  if (chance() < wrong) {
    return test.outcomes[Math.floor(chance() * test.outcomes.length)]?.id ?? '';
  }
  const shares = outcomes(yard, [test], [suspect])[0]?.[0] ?? [];
  let left = chance();
  const index = shares.findIndex((share) => (left -= share) < 0);
  return test.outcomes[Math.max(index, 0)]?.id ?? '';
}

/** Most tests of a hunt before it counts as lost. */
const MOST = 60;

/** A hunt for this suspect that does what it is told. */
export function follow(
  yard: Yard,
  suspect: Suspect,
  { seed, wrong, misread = wrong }: { seed: number; wrong: number; misread?: number }
): Hunt {
  const chance = seeded(seed);
  let hunt = beginHunt(yard, wrong);
  for (let count = 0; count < MOST; count++) {
    const advice = nextTest(hunt);
    if (!advice) break;
    const seen = shown(yard, advice.test, suspect, { chance, wrong: misread });
    hunt = told(hunt, advice.test.id, seen);
  }
  return hunt;
}

/** How many tests of two answers halve the suspects down to this one's set: each by its likeliest outcome, all suspects alike. */
export function halving(yard: Yard, suspect: Suspect): number {
  const tests = testsOf(yard);
  const all = suspectsOf(yard);
  const table = tableOf(yard, tests);
  const at = all.indexOf(suspect);
  let left = all.map((_, number) => number);
  for (let count = 0; ; count++) {
    const half = left.length / 2;
    let [best, off] = [undefined as readonly number[] | undefined, half];
    for (const row of table) {
      const first = row[left[0] ?? 0];
      const same = left.filter((number) => row[number] === first).length;
      if (Math.abs(same - half) < off) [best, off] = [row, Math.abs(same - half)];
    }
    if (!best) return count;
    const [row, mine, first] = [best, best[at], best[left[0] ?? 0]];
    left = left.filter((number) => (row[number] === first) === (mine === first));
  }
}

const tables = new WeakMap<Yard, readonly (readonly number[])[]>();

function tableOf(yard: Yard, tests: readonly Test[]): readonly (readonly number[])[] {
  const known =
    tables.get(yard) ??
    outcomes(yard, tests, suspectsOf(yard)).map((row) =>
      row.map((shares) => shares.indexOf(Math.max(...shares)))
    );
  tables.set(yard, known);
  return known;
}

/** Whether the hunt names this suspect, alone or in a set that no test tells apart. */
export const isNamed = (hunt: Hunt, suspect: Suspect): boolean => named(hunt).includes(suspect);
