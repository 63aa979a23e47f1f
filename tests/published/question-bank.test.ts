import { describe, expect, test } from 'vitest';
import { solve } from '../../src/lib/circuit';
import { circuitOf, read, type Edit } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment } from '../yard/build';

/**
 * Source: our own question bank on dead roads (Q5 to Q8), its figures checked by hand with Ohm's law:
 * 12 V at full knob, a 60 Ω stand-in for a loco, a 24 Ω test lamp. The open switch that holds the
 * whole supply: Timmermann & Kautz, "Investigating student understanding of voltage".
 */
const LOCO_OHMS = 60;

/** Road B off, held with an instrument; with or without the stand-in on it. */
function roadB(edit: Edit, { loco }: { readonly loco: boolean }) {
  const { yard, scene } = moment(
    { deckRoads: 2, supply: { ohms: 0 } },
    { controller: 1, edits: [edit] }
  );
  const circuit = circuitOf(yard, scene);
  const standIn = {
    kind: 'resistor' as const,
    id: 'loco',
    a: 'feed rail B',
    b: 'return rail B',
    ohms: LOCO_OHMS
  };
  const solution = solve(loco ? { ...circuit, elements: [...circuit.elements, standIn] } : circuit);
  const [key] = Object.keys(edit);
  const id = key === 'testLamp' ? 'test lamp' : `meter ${key}`;
  const element = circuit.elements.find((each) => each.id === id);
  return {
    volts: solution.between(element?.a as string, element?.b as string),
    amps: solution.amps(id)
  };
}

describe('the question bank: what a dead road still has', () => {
  const acrossToggle = { volts: ['toggle B panel side', 'toggle B rail side'] } satisfies Edit;

  test('Q5: across the open switch with a loco on the road stand 12 V', () => {
    near(roadB(acrossToggle, { loco: true }).volts, 12, { rel: 1e-4 });
  });

  test('Q6: the same, road empty: about nothing', () => {
    near(roadB(acrossToggle, { loco: false }).volts, 0, { abs: 1e-9 });
  });

  test('Q7: a lamp from the feed to the return rail of a dead road lights: 12 V, 0.5 A', () => {
    const lamp = roadB({ testLamp: ['feed', 'return rail B'] }, { loco: false });
    near(lamp.amps, 0.5, { rel: 0.01 });
    near(lamp.volts, 12, { rel: 0.01 });
  });

  test('Q8a: the lamp from the feed to the switched rail of an empty road is dark', () => {
    near(roadB({ testLamp: ['feed', 'feed rail B'] }, { loco: false }).amps, 0, { abs: 0 });
  });

  test('Q8b: with the loco on it the lamp is dim, home through the loco: 0.143 A', () => {
    const lamp = roadB({ testLamp: ['feed', 'feed rail B'] }, { loco: true });
    near(lamp.amps, 12 / (24 + LOCO_OHMS), { rel: 0.005 });
    near(lamp.amps, 0.143, { abs: 0.001 });
  });
});

describe('the question bank on the board itself, with Heron on B', () => {
  const board = (edits: readonly Edit[], locos: Record<string, string> = {}) => {
    const { yard, scene } = moment({ deckRoads: 3 }, { controller: 1, locos, edits: [...edits] });
    return read(yard, scene);
  };

  test.each<[string, Edit, Record<string, string>, string]>([
    ['Q7 empty', { testLamp: ['feed', 'return rail B'] }, {}, 'bright'],
    ['Q7 with Heron', { testLamp: ['feed', 'return rail B'] }, { Heron: 'B' }, 'bright'],
    ['Q8a', { testLamp: ['feed', 'feed rail B'] }, {}, 'dark'],
    ['Q8b', { testLamp: ['feed', 'feed rail B'] }, { Heron: 'B' }, 'dim']
  ])('%s: reading.testLamp', (_, edit, locos, lit) => {
    expect(board([edit], locos).testLamp).toBe(lit);
  });
});
