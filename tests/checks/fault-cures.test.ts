import { describe, expect, test } from 'vitest';
import { faultBoard, faultTable, groundOf, proveGap, type FaultRow } from '../../src/lib/checks';
import { read, type Fault, type YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

const known = new Map<YardInput, readonly FaultRow[]>();

function rowsOf(input: YardInput): readonly FaultRow[] {
  const steps = faultTable(yardOf(input));
  let step = steps.next();
  while (!step.done) step = steps.next();
  const { rows } = step.value;
  known.set(input, rows);
  return rows;
}

const faultOf = ({ faults }: FaultRow): Fault => faults[0] as Fault;
const endOf = ({ lets }: FaultRow) => {
  const [, road = '', end = ''] = /^Road (\S+) can .* its (west|east) end/.exec(lets) ?? [];
  return { road, end };
};

/** Whether the plain proof of a yard still finds the end open with these faults, the pin home. */
const isOpen = (input: YardInput, faults: readonly Fault[], row: FaultRow): boolean => {
  const { road, end } = endOf(row);
  return proveGap(groundOf(yardOf(input)), faults).breaches.some(
    (each) => each.pin === 'home' && each.road === road && each.end === end
  );
};

/** Its track-fed lamps let a broken link of the return feed one road through another. */
const lit: YardInput = {
  deckRoads: 2,
  stablingRoads: 2,
  lamps: 'track'
};

const yards: readonly YardInput[] = [
  lit,
  { deckRoads: 2, stablingRoads: 1, return: 'ring' },
  { deckRoads: 2, stablingRoads: 2, switching: 'pushes', plug: false },
  { deckRoads: 1, stablingRoads: 1, second: { roads: ['A', '1'] } }
];

describe('what takes a fault away', () => {
  test.each(yards)('is tried by the plain proof, and nothing cheaper would do: %j', (input) => {
    const rows = rowsOf(input);
    expect(rows.length).toBeGreaterThan(1);
    for (const row of rows) {
      const fault = faultOf(row);
      const { road } = endOf(row);
      const off: Fault = { wireOff: `feed dropper ${road}` };
      expect(isOpen(input, [fault], row), row.fault).toBe(true);
      const ring = { ...input, return: 'ring' as const };
      const ringHelps = input.return === undefined && !isOpen(ring, [fault], row);
      if (/^Close the return to a ring/.test(row.cure)) expect(ringHelps, row.fault).toBe(true);
      else {
        expect(ringHelps, row.fault).toBe(false);
        if (/second contact of the pin/.test(row.cure)) {
          expect(row.cure).toContain(`in the feed of ${road},`);
          expect(isOpen(input, [fault, off], row), row.fault).toBe(false);
          const { yard, scene } = faultBoard(yardOf(input), row);
          const volts = (faults: Fault[]) =>
            read(yard, { ...scene, faults }).between(`feed rail ${road}`, `return rail ${road}`);
          expect(Math.abs(volts([fault]) ?? 0), row.fault).toBeGreaterThan(0.1);
          expect(Math.abs(volts([fault, off]) ?? 0), row.fault).toBeLessThan(0.01);
        } else {
          expect(row.cure).toContain(`Put a stop at the`);
          expect(isOpen({ ...input, endStops: [road] }, [fault], row), row.fault).toBe(false);
        }
      }
    }
  });

  test('a broken link of the return asks for a ring, a welded contact for a second one', () => {
    const rows = known.get(lit) ?? rowsOf(lit);
    const cureOf = (words: RegExp) => rows.find(({ fault }) => words.test(fault))?.cure;
    expect(cureOf(/^The loop link 1 is broken/)).toMatch(/^Close the return to a ring/);
    expect(cureOf(/^Pin contact 1 never opens/)).toMatch(/^Put a second contact of the pin/);
  });
});
