import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ledReverseVolts } from '../../src/lib/tables';
import { liveRoads, read, type YardInput } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, reading, thrown, yardOf, type SceneInput } from './build';
import { anyKnob } from './random';

const own: YardInput = { deckRoads: 3, lamps: 'own' };
const track: YardInput = { deckRoads: 3, lamps: 'track' };
const on = (...names: string[]) => Object.fromEntries(names.map((name) => [name, true]));
const looks = (yard: YardInput, scene: SceneInput) => {
  const { lamp } = reading(yard, scene);
  return ['A', 'B', 'C'].map(lamp).join(' ');
};

describe('panel lamps on their own supply', () => {
  /** Source: Lessons in Electric Circuits III, Diodes: (12 V − 2 V) / 1000 Ω. */
  test('carry (12 V − 2 V) / 1000 Ω = 10 mA, within wire, pole and supply', () => {
    const { amps, circuit } = reading(own, { switches: on('A') });
    near(amps('lamp A'), (12 - 2) / 1000, { rel: 1e-3 });
    expect(amps('lamp B')).toBe(0);
    expect(circuit.elements.find(({ id }) => id === 'lamp resistor A')).toMatchObject({
      ohms: 1000
    });
  });

  test.each([
    [5, 330],
    [9, 820],
    [24, 2200]
  ])('on %d V have %d Ω: (volts − 2) / 10 mA, or the next E12 value above', (volts, ohms) => {
    const { circuit, lamp } = reading({ ...own, lampSupply: { volts } }, { switches: on('A') });
    const resistor = circuit.elements.find(({ id }) => id === 'lamp resistor A');
    expect(resistor).toMatchObject({ ohms });
    expect(lamp('A')).toBe('lit');
  });

  test('tell the toggle’s position only, whatever knob, plug, droppers and locos do', () => {
    const anyScene = fc.record({
      controller: anyKnob,
      plug: fc.constantFrom('in' as const, 'out' as const),
      switches: fc.record({ A: fc.boolean(), B: fc.boolean(), C: fc.boolean() }),
      edits: fc.subarray([
        { off: 'return dropper A' },
        { off: 'feed dropper B' },
        { metal: 'rails of C' },
        { off: 'return wire' }
      ])
    });
    fc.assert(
      fc.property(anyScene, (scene) => {
        const { A, B, C } = scene.switches;
        const words = [A, B, C].map((made) => (made ? 'lit' : 'dark')).join(' ');
        expect(looks({ ...own, plug: { returnContacts: 2 } }, scene)).toBe(words);
      }),
      { numRuns: 60 }
    );
  });

  test('stay lit with the plug out, when every deck road is dead', () => {
    const { yard, scene } = moment(
      { ...own, stablingRoads: 1 },
      { switches: on('A', 'B'), plug: 'out' }
    );
    expect(read(yard, scene).lamp('A')).toBe('lit');
    expect([...liveRoads(yard, scene)]).toEqual(['Q']);
  });

  test('lamp lit, road dead: a dropper is off; lamp dark, road live: the lamp’s wire is off', () => {
    const { yard, scene } = moment(own, {
      switches: on('A', 'B'),
      edits: [{ off: 'feed dropper A' }, { off: 'lamp wire B' }]
    });
    const { lamp } = read(yard, scene);
    expect([lamp('A'), lamp('B')]).toEqual(['lit', 'dark']);
    expect([...liveRoads(yard, scene)]).toEqual(['B']);
  });

  test('6: a short on the track leaves them lit', () => {
    const short = reading(own, {
      controller: 1,
      switches: on('A'),
      edits: [{ metal: 'rails of A' }]
    });
    expect(short.limiting).toBe(true);
    expect(short.lamp('A')).toBe('lit');
    near(short.amps('lamp A'), 0.01, { rel: 1e-3 });
  });

  test('their supply is an island of its own: no volts can be read between it and the track', () => {
    const { level, between } = reading(own, { controller: 0.5, switches: on('A') });
    expect(between('lamp +', 'return')).toBeUndefined();
    expect(level('lamp +').joined).toBe('lamp supply');
    near(between('lamp +', 'lamp -'), 12, { rel: 1e-3 });
  });

  test('with a rotary a second wafer lights the chosen road’s lamp; both between, if it makes first', () => {
    const rotary = { ...own, switching: 'rotary' } as const;
    const make = { ...rotary, rotary: 'make before break' } as const;
    expect(looks(rotary, { selector: 'B' })).toBe('dark lit dark');
    expect(looks(rotary, { selector: 'B-C' })).toBe('dark dark dark');
    expect(looks(make, { selector: 'B-C' })).toBe('dark lit lit');
  });
});

describe('panel lamps fed from the track', () => {
  test('dim with the knob, and are dark reversed', () => {
    const at = (controller: number) => reading(track, { controller, switches: on('A') }).lamp('A');
    expect([1, 0.6, 0.3, 0.17, 0.1, 0, -0.3, -1].map(at)).toEqual([
      'lit',
      'lit',
      'dim',
      'dim',
      'dark',
      'dark',
      'dark',
      'dark'
    ]);
  });

  test('their current grows with the knob, and is (volts − 2) / 1000 Ω at full', () => {
    const amps = (knob: number) =>
      reading(track, { controller: knob, switches: on('A') }).amps('lamp A');
    const all = [0.2, 0.4, 0.6, 0.8, 1].map(amps);
    expect([...all].sort((a, b) => a - b)).toEqual(all);
    near(amps(1), 0.01, { rel: 2e-3 });
  });

  test('the guard keeps the LED’s reverse volts far below what it stands', () => {
    const { between, amps } = reading(track, { controller: -1, switches: on('A') });
    const reverse = between('return', 'lamp node A') ?? NaN;
    expect(reverse).toBeGreaterThan(0.6);
    expect(reverse).toBeLessThan(1);
    expect(reverse).toBeLessThan(ledReverseVolts);
    near(amps('lamp guard A'), (12 - 0.7) / 1000, { rel: 0.01 });
  });

  test('make no road live and hide no break: the trace goes past them', () => {
    const { yard, scene } = moment(track, { controller: 1, switches: on('A') });
    expect([...liveRoads(yard, scene)]).toEqual(['A']);
    expect(read(yard, scene).why('B').breaks).toEqual(['toggle B']);
  });

  test('go out in a short on the track', () => {
    const scene = { controller: 1, switches: on('A'), edits: [{ metal: 'rails of A' }] };
    expect(reading(track, scene).lamp('A')).toBe('dark');
  });

  test('follow their toggle into another wire', () => {
    const edits = [{ toggle: 'A', in: 'return dropper A' }];
    const { runs } = reading(track, { switches: on('A'), edits });
    const from = runs.find(({ id }) => id === 'lamp feed A')?.from;
    expect(from).not.toMatch(/^behind/);
    expect(from).toBe('return tag A');
  });
});

test.each(['pushes', 'none'] as const)('lamps with %s are refused in words', (switching) => {
  const error = thrown(() => yardOf({ deckRoads: 2, switching, lamps: 'own' }));
  expect(String(error)).toContain('toggles (second pole) or a rotary (second wafer) only');
});

test('a road without a switch has no lamp', () => {
  const { lamp } = reading({ deckRoads: 2, runningRoad: true, lamps: 'own' });
  expect([lamp('Q'), lamp('A')]).toEqual([undefined, 'dark']);
});
