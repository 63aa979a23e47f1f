import { bench } from 'vitest';
import { faultSteps, groundOf, proveGap, statesOf } from '../../src/lib/checks';
import { admit, faultsOf, YardSchema } from '../../src/lib/yard';

const sizes = [
  [7, 4],
  [24, 12],
  [40, 20]
] as const;

/** Milliseconds that some work takes. */
function millis(work: () => void): string {
  const from = performance.now();
  work();
  return (performance.now() - from).toFixed(1);
}

/** Faults whose proofs are timed. */
const FAULTS = 50;

let done = false;
function prove(): void {
  if (done) return;
  done = true;
  const rows = sizes.map(([deckRoads, stablingRoads]) => {
    const yard = admit('yard', YardSchema, {
      deckRoads,
      stablingRoads,
      runningRoad: 'interlocked'
    });
    proveGap(groundOf(yard));
    const ground = groundOf(yard);
    const steps = faultSteps(ground);
    return {
      yard: `${String(deckRoads)}+${String(stablingRoads)}`,
      states: String(statesOf(ground).all),
      'places, ms': millis(() => groundOf(yard)),
      'proof, ms': millis(() => proveGap(ground)),
      unsafe: String(proveGap(ground).unsafe),
      faults: faultsOf(yard).length,
      [`${String(FAULTS)} faults, ms`]: millis(() => {
        for (let count = 0; count < FAULTS; count++) steps.next();
      })
    };
  });
  console.info('\nGap proof, every state:');
  console.table(rows);
}

bench('gap proof', prove, { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 });
