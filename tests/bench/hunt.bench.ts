import { bench } from 'vitest';
import { beginHunt, nextTest, readySteps, suspectsOf, told } from '../../src/lib/hunt';
import { everyFault, misread, nameOf, whole, yardWith, type Size } from '../hunt/every';

/** Milliseconds that some work takes. */
function millis(work: () => unknown): string {
  const from = performance.now();
  work();
  return (performance.now() - from).toFixed(0);
}

function firstTests(size: Size) {
  const hunt = beginHunt(yardWith(size), 0);
  const ready = millis(() => [...readySteps(hunt.yard)]);
  const first = millis(() => nextTest(hunt));
  const advice = nextTest(hunt);
  const outcome = advice?.means.at(1)?.outcome.id ?? '';
  const second = told(hunt, advice?.test.id ?? '', outcome);
  return {
    yard: nameOf(size),
    suspects: suspectsOf(hunt.yard).length,
    'made ready, ms': ready,
    'first test, ms': first,
    'second test, ms': millis(() => nextTest(second))
  };
}

let done = false;
function huntAll(): void {
  if (done) return;
  done = true;
  console.info('\nFault hunt, the next test:');
  console.table([...whole, [24, 12] as const].map(firstTests));
  console.info('\nFault hunt, every single fault by the advice:');
  console.table(whole.map(everyFault));
  console.info('\nFault hunt, one reading in ten wrong:');
  console.table([misread([2, 1], 1000)]);
}

bench('fault hunt', huntAll, { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 });
