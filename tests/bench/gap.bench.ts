import { bench } from 'vitest';
import { faultTable, groundOf, proveGap, statesOf } from '../../src/lib/checks';
import { hurtYard } from '../../src/lib/checks/gap/hurt';
import { soundOf } from '../../src/lib/checks/gap/sound';
import { result } from '../../src/lib/checks/result';
import { admit, faultsOf, YardSchema, type Fault, type Yard } from '../../src/lib/yard';
import { drawn, engineVolts, proved, WIRE_VOLTS, yardsOf } from '../checks/engine-states';

const sizes = [
  [7, 4],
  [24, 12],
  [40, 20]
] as const;

/** Milliseconds that some work takes. */
function millis(work: () => unknown): string {
  const from = performance.now();
  work();
  return (performance.now() - from).toFixed(1);
}

/** Unsafe states with no fault or one of so many, spread over all. */
function countWithFaults(yard: Yard, many: number): bigint {
  const sound = soundOf(groundOf(yard));
  const all = faultsOf(yard);
  const faults = Array.from({ length: many }, (_, index) => {
    return all[Math.floor((index * all.length) / many)] as Fault;
  });
  return faults.reduce(
    (sum, fault) => sum + hurtYard(sound, [fault]).proof.unsafe,
    sound.proof.unsafe
  );
}

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
    result(faultTable(yard));
    const ground = groundOf(yard);
    return {
      yard: `${String(deckRoads)}+${String(stablingRoads)}`,
      states: String(statesOf(ground).all),
      'places, ms': millis(() => groundOf(yard)),
      'proof, ms': millis(() => proveGap(ground)),
      unsafe: String(proveGap(ground).unsafe),
      faults: faultsOf(yard).length,
      '205 of them, ms': millis(() => countWithFaults(yard, 205)),
      'all faults, ms': millis(() => result(faultTable(yard)))
    };
  });
  console.info('\nGap proof, every state:');
  console.table(rows);
}

let asked = false;
/** One state in a hundred of the smallest yards, with each single fault and without, asked of the engine. */
function ask(): void {
  if (asked) return;
  asked = true;
  const yards = yardsOf(1, 1);
  const good = drawn(yards, false);
  const faulty = drawn(yards, true);
  const differ = [
    ...good.filter((state) => engineVolts(state) > 1e-6 !== proved(state)),
    ...faulty.filter((state) => engineVolts(state) > WIRE_VOLTS && !proved(state))
  ];
  const asks = `${String(good.length)} states without a fault and ${String(faulty.length)} with one`;
  console.info(`\nThe engine, asked of ${asks}: ${String(differ.length)} differ from the proof.`);
  if (differ.length > 0) throw new Error(JSON.stringify(differ[0]));
}

const once = { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 };
bench('gap proof', prove, once);
bench('gap proof, asked of the engine', ask, once);
