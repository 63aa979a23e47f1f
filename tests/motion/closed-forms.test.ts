import { describe, expect, test } from 'vitest';
import { driveTo, start, TICKS_PER_SECOND } from '../../src/lib/motion';
import { contacts, wireOhmsPerMetre } from '../../src/lib/tables';
import { read } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, type SceneInput } from '../yard/build';

/**
 * Motor equations of a permanent-magnet DC motor with Coulomb friction, in closed form:
 * U = i·R + k·v, m·dv/dt = k·(i − I₀). Source: e.g. OpenStax University Physics vol. 2, m58481.
 * The figures are the demo scenario's table, written out again here.
 */
const table = [
  { name: 'Plover', ohms: 20, lightAmps: 0.18, lightSpeed: 0.25, mass: 0.18 },
  { name: 'Heron', ohms: 18, lightAmps: 0.25, lightSpeed: 0.3, mass: 0.35 },
  { name: 'Curlew', ohms: 22, lightAmps: 0.14, lightSpeed: 0.35, mass: 0.25 },
  { name: 'Dunlin', ohms: 24, lightAmps: 0.12, lightSpeed: 0.18, mass: 0.15 },
  { name: 'Avocet', ohms: 14, lightAmps: 0.35, lightSpeed: 0.4, mass: 0.5 }
] as const;
type Figures = (typeof table)[number];

/** k = (12 V − I₀·R) / v₀, V·s/m and N/A. */
const constant = ({ ohms, lightAmps, lightSpeed }: Figures): number =>
  (12 - lightAmps * ohms) / lightSpeed;

/** Controller, wires out and home, toggle: all that stands in the loop beside the loco, Ω. */
const loopOhms =
  0.5 +
  2 * 2 * wireOhmsPerMetre('24/0.2') +
  2 * 1.5 * wireOhmsPerMetre('16/0.2') +
  contacts.toggle.ohms;

const volts = 24;
const alone = ({ name }: Figures, knob: number, edits: SceneInput['edits'] = []) =>
  moment(
    { deckRoads: 1, roadLengthMm: 3000, supply: { volts, limitAmps: 10 } },
    { locos: { [name]: { road: 'A', atMm: 200 } }, switches: { A: true }, controller: knob, edits }
  );

/** Speed and distance gone after `ticks`. */
function after(figures: Figures, knob: number, ticks: number, extra = 0) {
  const edits = extra > 0 ? [{ resistor: extra, in: 'feed dropper A' }] : [];
  const { yard, scene } = alone(figures, knob, edits);
  const driven = driveTo(yard, start(scene), ticks / TICKS_PER_SECOND).scene;
  const { speed = NaN } = driven.locos[figures.name] ?? {};
  return { speed, yard, scene: driven };
}

const rel = { rel: 1e-6 };

describe.each(table)('$name, with $ohms Ω and what its loop adds', (figures) => {
  const { name, ohms, lightAmps } = figures;
  const k = constant(figures);
  const total = ohms + loopOhms;

  test.each([0.3, 0.5, 0.75])('runs light at v = (U − I₀·(R + Rₗ))/k, knob %d', (knob) => {
    const { speed, yard, scene } = after(figures, knob, 3 * TICKS_PER_SECOND);
    near(speed, (knob * volts - lightAmps * total) / k, rel);
    near(read(yard, scene).amps(name), lightAmps, rel);
  });

  test.each([0.05, 0.5, 1])('held still it draws U/(R + Rₗ), knob %d', (knob) => {
    const { yard, scene } = alone(figures, knob);
    near(read(yard, scene).amps(name), (knob * volts) / total, rel);
  });

  test('starts at U = I₀·(R + Rₗ), one part in a million either side', () => {
    const knob = (lightAmps * total) / volts;
    expect(after(figures, knob * (1 - 1e-6), 60).speed).toBe(0);
    expect(after(figures, knob * (1 + 1e-6), 60).speed).toBeGreaterThan(0);
  });

  test('runs up as v∞·(1 − exp(−t/τ)), τ = m·(R + Rₗ)/k², to x/(2e) of v∞, x = dt/τ', () => {
    for (const { x, error } of [runUp(figures, 0), runUp(figures, 30)]) {
      expect(error).toBeGreaterThan(0);
      expect(error).toBeLessThanOrEqual((1.01 * x) / (2 * Math.E));
      expect(error).toBeLessThan(0.25);
    }
  });
});

/**
 * Run-up with `extra` Ω in the feed: dt/τ, and the greatest error as a share of v∞.
 * A step backwards in time (implicit Euler) gives 1 − (1 + x)⁻ⁿ in place of 1 − e⁻ⁿˣ, x = dt/τ. Its
 * greatest error is x/(2e) to first order: it shrinks with the step, and is not small where τ is
 * shorter than a step, as it is for the lightest locos on a stiff supply (there, below 0.25 of v∞).
 */
function runUp(figures: Figures, extra: number) {
  const { ohms, lightAmps, mass } = figures;
  const total = ohms + loopOhms + extra;
  const k = constant(figures);
  const final = (volts - lightAmps * total) / k;
  const x = k ** 2 / (mass * total) / TICKS_PER_SECOND;
  const errors = Array.from({ length: 40 }, (_, index) => {
    const { speed } = after(figures, 1, index + 1, extra);
    near(speed, final * (1 - (1 + x) ** -(index + 1)), { rel: 1e-9 });
    return Math.abs(speed / final - (1 - Math.exp(-(index + 1) * x)));
  });
  return { x, error: Math.max(...errors) };
}

test('the error of a run-up is of first order in dt/τ: half the ratio, half the error', () => {
  const avocet = table[4];
  const [whole, half] = [25, 50].map((total) => runUp(avocet, total - avocet.ohms - loopOhms));
  near(half?.x, (whole?.x ?? NaN) / 2, { rel: 1e-9 });
  near((whole?.error ?? NaN) / (half?.error ?? NaN), 2, { abs: 0.15 });
  near((half?.error ?? NaN) / (half?.x ?? NaN), 1 / (2 * Math.E), { rel: 0.1 });
  expect(half?.error).toBeLessThan(0.02);
});

/**
 * Scale speed. At 4 mm to the foot, 1:76.2 (common practice), v·76.2 is the full-size speed.
 * NEM 661:2011: at nominal voltage (12 V: NEM 630:1982 table 1, 16.5 mm gauge) a model may go 30 %
 * faster than its prototype's top speed, H0, whose gauge it shares. The locos are invented and have no prototype:
 * the top speeds are what is common for such an engine, km/h.
 */
test.each([
  ['Plover', 0.25, 'a small tank', 60],
  ['Heron', 0.3, 'a goods tender engine', 80],
  ['Curlew', 0.35, 'a railcar', 100],
  ['Dunlin', 0.18, 'a shunter', 40],
  ['Avocet', 0.4, 'a diesel', 110]
])('NEM 661: %s at %d m/s on 12 V goes no faster than %s of %d km/h may', (...row) => {
  const [name, speed, , topKmh] = row;
  const figures = table.find((each) => each.name === name) ?? expect.fail(`no ${name}`);
  // 12 V at the rails: half of 24 V, and what the loop takes.
  const { yard, scene } = alone(figures, 0.5 + (0.5 * figures.lightAmps * loopOhms) / 12);
  const driven = driveTo(yard, start(scene), 2).scene;
  near(driven.locos[name]?.speed, speed, rel);
  const scaleKmh = (driven.locos[name]?.speed ?? NaN) * 76.2 * 3.6;
  expect(scaleKmh).toBeLessThanOrEqual(1.3 * topKmh);
  expect(scaleKmh).toBeGreaterThan(0.9 * topKmh);
});
