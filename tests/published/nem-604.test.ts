import { describe, expect, test } from 'vitest';
import { dropEachWay, dropShare, permissibleLength } from '../../src/lib/tables';
import { near } from '../circuit/near';

const disc = (d: number): number => (Math.PI / 4) * d ** 2;

/** NEM 604:2013: clauses 2.2 and 2.4, table 2. */
describe('permissibleLength(mm2, amps, drop)', () => {
  test.each([
    ['solid, 0.40 mm', disc(0.4), 3.5, 3.531],
    ['solid, 1.50 mm', disc(1.5), 49.6, 49.638],
    ['flexible, 0.14 mm²', 0.14, 3.9, 3.933],
    ['flexible, 1.50 mm²', 1.5, 42, 42.135]
  ])('%s at 1 A and 0.5 V', (_, mm2, printed, exact) => {
    near(permissibleLength(mm2, 1), printed, { abs: 0.15 });
    near(permissibleLength(mm2, 1), exact, { rel: 1e-3 });
  });

  test('the worked example: 0.5 mm at 1.2 A, with the area as it is and as it is rounded there', () => {
    near(permissibleLength(disc(0.5), 1.2), 4.596, { rel: 1e-3 });
    near(permissibleLength(0.2, 1.2), 4.7, { abs: 0.05 });
  });

  test('the drop recommended: a tenth of the source, 1.0 V out and back in practice', () => {
    expect(dropShare).toBe(0.1);
    expect(2 * dropEachWay).toBe(1);
  });
});
