import { expect, test } from 'vitest';
import { prepare, solve, type Circuit } from '../../src/lib/circuit';

const loop = (ohms: number, emf: number): Circuit => ({
  ground: '0',
  elements: [
    { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 7.2, ohms: 0.5, limit: 1.5 },
    { kind: 'switch', id: 'S1', a: 'p', b: 'q', closed: true, ohms: 0.02 },
    { kind: 'motor', id: 'M1', a: 'q', b: '0', ohms, emf }
  ]
});

test('set(motor, { ohms, emf }): the next solve has both, as a fresh solve has', () => {
  const prepared = prepare(loop(20, 0));
  prepared.solve();
  prepared.set('M1', { ohms: 72, emf: -9 });
  expect(prepared.solve().amps('M1'), 'amps after the change').toBe(solve(loop(72, -9)).amps('M1'));
});

test('set(source, { volts }): the next solve has them', () => {
  const prepared = prepare(loop(20, 0));
  prepared.solve();
  prepared.set('G1', { volts: -12 });
  const fresh = loop(20, 0).elements.map((each) =>
    each.id === 'G1' ? { ...each, volts: -12 } : each
  );
  expect(prepared.solve().amps('M1')).toBe(
    solve({ ground: '0', elements: fresh as Circuit['elements'] }).amps('M1')
  );
});
