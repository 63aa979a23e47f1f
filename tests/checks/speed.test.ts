import { expect, test } from 'vitest';
import { admit, YardSchema, faultsOf } from '../../src/lib/yard';
import { groundOf, proveGap, faultSteps } from '../../src/lib/checks';
test('x', () => {
  for (const [d, s] of [
    [7, 4],
    [24, 12],
    [40, 20]
  ] as const) {
    const y = admit('y', YardSchema, {
      deckRoads: d,
      stablingRoads: s,
      runningRoad: 'interlocked'
    });
    for (let k = 0; k < 2; k++) {
      const t = performance.now();
      const g = groundOf(y);
      const t1 = performance.now();
      const p = proveGap(g);
      const t2 = performance.now();
      console.log(d, s, g.moments.length, (t1 - t).toFixed(0), (t2 - t1).toFixed(0), p.unsafe);
    }
    const t3 = performance.now();
    const st = faultSteps(groundOf(y));
    let n = 0;
    while (performance.now() - t3 < 8000 && !st.next().done) n++;
    console.log('faults', n, 'of', faultsOf(y).length, (performance.now() - t3).toFixed(0));
  }
  expect(1).toBe(1);
});
