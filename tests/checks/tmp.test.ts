import { expect, test } from 'vitest';
import { admit, YardSchema, faultsOf, faultName } from '../../src/lib/yard';
import { proveGap, groundOf, statesOf } from '../../src/lib/checks/gap/proof';
import { brute, bruteMoments } from './brute';
import { toggleRoads } from '../../src/lib/yard';
test('x', () => {
  for (const [d, s] of [[1,1],[2,2],[5,4]] as const) for (const runningRoad of ['none','direct','interlocked'] as const) {
    const y = admit('y', YardSchema, { deckRoads: d, stablingRoads: s, runningRoad });
    const t = performance.now(); const g = groundOf(y); const p = proveGap(g);
    const t2 = performance.now();
    const m = bruteMoments(y);
    const b = d < 5 ? brute(y, toggleRoads(y), (x) => x, m) : undefined;
    console.log(d, s, runningRoad, statesOf(g).all, p.unsafe, p.unsafeHome, b?.states, b?.unsafe, b?.unsafeHome, (t2 - t).toFixed(1), (performance.now()-t2).toFixed(0), p.breaches.length, [...b?.ends ?? []].length);
    if (d === 5) console.log(p.breaches.map((x) => JSON.stringify(x)).join('\n'));
    const fs = faultsOf(y);
    const t3 = performance.now();
    const r = fs.map((f) => proveGap(g, [f]));
    const t4 = performance.now();
    let bad = 0;
    if (d < 5) fs.forEach((f, i) => { const q = brute(y, toggleRoads(y), (x) => ({ ...x, faults: [f] }), m); if (q.unsafe !== r[i]?.unsafe || q.unsafeHome !== r[i]?.unsafeHome) { bad++; console.log(faultName(f), q.unsafe, r[i]?.unsafe, q.unsafeHome, r[i]?.unsafeHome); } });
    console.log(fs.length, 'faults', (t4 - t3).toFixed(0), (performance.now() - t4).toFixed(0), 'bad', bad);
  }
  expect(1).toBe(1);
});
