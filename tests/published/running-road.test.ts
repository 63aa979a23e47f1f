import { describe, expect, test } from 'vitest';
import { metals } from '../../src/lib/tables';
import { read } from '../../src/lib/yard';
import { near, type Tolerance } from '../circuit/near';
import { moment } from '../yard/build';

/** Heron held on the running road, whose main run is wired with `size` out to its tag and home from the joint. */
function running(size: string, lengthM: number) {
  const { yard, scene } = moment(
    { deckRoads: 1, runningRoad: true, wires: { main: { size, lengthM } } },
    { locos: { Heron: 'Q' }, controller: 1 }
  );
  const { amps, between } = read(yard, scene);
  const out = between('feed', 'feed tag Q') ?? NaN;
  const home = between('return joint', 'return') ?? NaN;
  return { amps: amps('Heron'), out, home };
}

/** Checks volts lost in the two wires against I·(Ω/km)·length. */
function drops(size: string, ohmsPerKm: number, tolerance: Tolerance): void {
  for (const lengthM of [2.4, 10]) {
    const { amps, out, home } = running(size, lengthM);
    const expected = amps * (ohmsPerKm / 1000) * lengthM;
    expect(amps).toBeGreaterThan(0.1);
    near(out, expected, tolerance);
    near(home, expected, tolerance);
  }
}

/** National Bureau of Standards wire table, as HyperPhysics reprints it: printed Ω/km at 20 °C. */
describe('volt drop of the running road, AWG wire', () => {
  test.each([
    [10, 3.277],
    [12, 5.211],
    [13, 6.571],
    [15, 10.45],
    [16, 13.17],
    [18, 20.95],
    [19, 26.41],
    [21, 42],
    [22, 52.96],
    [24, 84.21],
    [25, 106.2],
    [27, 168.9],
    [28, 212.9],
    [30, 338.5],
    [31, 426.9]
  ])('AWG %d loses I·%d Ω/km·length each way', (gauge, ohmsPerKm) => {
    drops(`AWG ${String(gauge)}`, ohmsPerKm, { rel: 1e-3 });
  });
});

/** Geometry: ρ/A of round 0.2 mm strands of annealed copper, no allowance for lay. */
describe('volt drop of the running road, stranded wire', () => {
  test.each([
    ['7/0.2', 78.4],
    ['16/0.2', 34.3],
    ['32/0.2', 17.15]
  ])('%s mm loses I·%d Ω/km·length each way', (size, ohmsPerKm) => {
    drops(size, ohmsPerKm, { rel: 2e-3 });
  });
});

/**
 * NEM 604:2013 table 2: greatest length of one wire that loses 0.5 V at 1 A. Its copper is 3.2 %
 * worse than annealed copper, so the same wire loses that much less here.
 */
describe('NEM 604: permissible lengths', () => {
  const norm = metals['norm copper'].resistivity / metals['annealed copper'].resistivity;

  test.each([
    ['1/0.40', 'wire of 0.40 mm', 3.5, 0.15],
    ['1/1.50', 'wire of 1.50 mm', 49.6, 0.15],
    ['0.14 mm²', 'flexible wire of 0.14 mm²', 3.9, 0.15],
    ['1.50 mm²', 'flexible wire of 1.50 mm²', 42, 0.15]
  ])('%s: %s loses 0.5 V an amp in %d m', (size, _, ...[lengthM, metres]) => {
    const { amps, out, home } = running(size, lengthM);
    near((out * norm) / amps, 0.5, { abs: (0.5 * metres) / lengthM });
    near(home, out, { rel: 1e-9 });
  });

  test('cl. 2.2, 1.0 V out and home: the Quay line as built keeps well within', () => {
    const { amps, out, home } = running('24/0.2', 2.4);
    expect(amps).toBeGreaterThan(0.6);
    expect(out + home).toBeGreaterThan(0.03);
    expect(out + home).toBeLessThan(1);
  });

  test('cl. 2.2, 1.0 V out and home: thin wire as long as a room does not', () => {
    const { out, home } = running('7/0.2', 20);
    expect(out + home).toBeGreaterThan(1);
  });
});
