import { expect, test } from 'vitest';
import { admit, YardSchema } from '../../src/lib/yard';
import { proveGap } from '../../src/lib/checks/gap/proof';
import { brute } from './brute';
import { toggleRoads } from '../../src/lib/yard';
test('x', () => {
  for (const [d, s] of [[3,2],[5,4],[7,4]] as const) for (const runningRoad of ['none','direct','interlocked'] as const) {
    const y = admit('y', YardSchema, { deckRoads: d, stablingRoads: s, runningRoad });
    const t = performance.now(); const p = proveGap(y);
    const t2 = performance.now();
    const b = d < 4 ? brute(y, toggleRoads(y)) : undefined;
    console.log(d, s, runningRoad, p.states.all, p.unsafe, p.unsafeHome, b?.states, b?.unsafe, b?.unsafeHome, (t2 - t).toFixed(1), (performance.now()-t2).toFixed(0), p.breaches.length, [...b?.ends ?? []].length);
    if (d === 3) console.log(p.breaches);
  }
  expect(1).toBe(1);
});
