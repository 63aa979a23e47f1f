import { bench } from 'vitest';
import { beginHunt, named, nextTest, suspectsOf, told } from '../../src/lib/hunt';
import { yardOf } from '../yard/build';
import { follow, halving, isNamed } from '../hunt/drive';

/** Yards of which every fault is hunted, and those of which only the next tests are timed. */
const whole = [
  [2, 1],
  [5, 4],
  [12, 6]
] as const;
const timed = [...whole, [24, 12]] as const;

/** Hunts with wrong readings. */
const HUNTS = 1000;

const yardWith = ([deckRoads, stablingRoads]: readonly [number, number]) =>
  yardOf({ deckRoads, stablingRoads, lamps: 'own' });

const nameOf = ([deck, stabling]: readonly [number, number]): string =>
  `${String(deck)}+${String(stabling)}`;

const mean = (all: readonly number[]): string =>
  (all.reduce((a, b) => a + b, 0) / all.length).toFixed(2);

/** Milliseconds that some work takes. */
function millis(work: () => unknown): string {
  const from = performance.now();
  work();
  return (performance.now() - from).toFixed(0);
}

function firstTests(size: readonly [number, number]) {
  const hunt = beginHunt(yardWith(size), 0);
  const first = millis(() => nextTest(hunt));
  const advice = nextTest(hunt);
  const outcome = advice?.means.at(1)?.outcome.id ?? '';
  const second = told(hunt, advice?.test.id ?? '', outcome);
  return {
    yard: nameOf(size),
    suspects: suspectsOf(hunt.yard).length,
    'first test, ms': first,
    'second test, ms': millis(() => nextTest(second))
  };
}

function everyFault(size: readonly [number, number]) {
  const yard = yardWith(size);
  const all = suspectsOf(yard);
  const hunts = all.map((suspect) => follow(yard, suspect, { seed: 1, wrong: 0 }));
  const counts = hunts.map((hunt) => hunt.told.length);
  const halved = all.map((suspect) => halving(yard, suspect));
  return {
    yard: nameOf(size),
    suspects: all.length,
    named: hunts.filter((hunt, index) => isNamed(hunt, all[index] as (typeof all)[number])).length,
    'set, mean': mean(hunts.map((hunt) => named(hunt).length)),
    'tests, mean': mean(counts),
    worst: Math.max(...counts),
    'halving, mean': mean(halved),
    'halving, worst': Math.max(...halved),
    log2: Math.log2(all.length).toFixed(2)
  };
}

function misread() {
  const yard = yardWith(whole[0]);
  const all = suspectsOf(yard);
  const hunts = Array.from({ length: HUNTS }, (_, seed) => {
    const suspect = all[seed % all.length] as (typeof all)[number];
    return isNamed(follow(yard, suspect, { seed, wrong: 0.1 }), suspect);
  });
  return { yard: nameOf(whole[0]), hunts: HUNTS, 'named at once': hunts.filter(Boolean).length };
}

let done = false;
function huntAll(): void {
  if (done) return;
  done = true;
  console.info('\nFault hunt, the next test:');
  console.table(timed.map(firstTests));
  console.info('\nFault hunt, every single fault by the advice:');
  console.table(whole.map(everyFault));
  console.info('\nFault hunt, one reading in ten wrong:');
  console.table([misread()]);
}

bench('fault hunt', huntAll, { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 });
