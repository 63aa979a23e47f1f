import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { groundOf, proveGap } from '../../src/lib/checks';
import { solve, type Circuit } from '../../src/lib/circuit';
import { circuitOf, liveRoads, locoNamed, read, type Fault } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { Simulator } from '../circuit/simulator';
import { allowed, errorsOf, zeroOf } from '../circuit/simulator-compare';
import { netlistOf } from '../circuit/simulator-netlist';
import { moment, yardOf } from '../yard/build';

/** A and B on the first controller, C and D on the second, their common return lost on its way home. */
const yard = { deckRoads: 4, second: { roads: ['C', 'D'] } };
const lost: Fault = { wireOff: 'return wire' };
const switches = { A: true, C: true };

const simulator = new Simulator();
beforeAll(async () => {
  for (const method of ['log', 'warn', 'error'] as const) {
    vi.spyOn(console, method).mockImplementation(() => undefined);
  }
  await simulator.start();
}, 30_000);
afterAll(() => vi.restoreAllMocks());

/** The scene's circuit with Plover held on A and Heron on C. */
function circuit(controller: number, second: number): Circuit {
  const at = moment(yard, { switches, controller, second, faults: [lost] });
  const motors = [
    ['Plover', 'A'],
    ['Heron', 'C']
  ] as const;
  const plain = circuitOf(at.yard, at.scene);
  return {
    ...plain,
    elements: [
      ...plain.elements,
      ...motors.map(([name, road]) => ({
        kind: 'motor' as const,
        id: name,
        a: `feed rail ${road}`,
        b: `return rail ${road}`,
        ohms: locoNamed(name).ohms,
        emf: 0
      }))
    ]
  };
}

describe('the return is lost: two locos in series, through the road of the other controller', () => {
  const both = locoNamed('Plover').ohms + locoNamed('Heron').ohms;

  test.each([
    [1, 0, 12],
    [0, 1, -12],
    [1, -1, 24],
    [1, 1, 0]
  ])('knobs %d and %d: the engine lays %d V across both, as the simulator does', async (...row) => {
    const [controller, second, volts] = row;
    const tried = circuit(controller, second);
    const solution = solve(tried);
    near(solution.amps('Plover'), -solution.amps('Heron'), { abs: 1e-9 });
    // Wires, contacts and two controllers of 0.5 Ω take less than a tenth.
    near(solution.amps('Plover'), volts / both, { rel: 0.1, abs: 1e-9 });

    const zero = zeroOf(tried);
    const mark = 1 + controller * 3 + second;
    const netlist = netlistOf(tried, solution, { zero, gmin: 1e-12, mark });
    const answer = await simulator.operatingPoint(netlist.text, mark);
    expect(answer).toBeDefined();
    const errors = answer && errorsOf(solution, netlist, zero, answer);
    expect(errors?.volts).toBeLessThanOrEqual(allowed.volts);
    expect(errors?.amps).toBeLessThanOrEqual(allowed.amps);
  });

  test('Heron starts though its own knob stands at the centre; with the return whole it stands', () => {
    const scene = { switches, controller: 1, second: 0, locos: { Plover: 'A', Heron: 'C' } };
    const hurt = moment(yard, { ...scene, faults: [lost] });
    expect(Math.abs(read(hurt.yard, hurt.scene).amps('Heron'))).toBeGreaterThan(
      locoNamed('Heron').lightAmps
    );
    const whole = moment(yard, scene);
    // What the shared wire home takes lays some millivolts on it.
    near(read(whole.yard, whole.scene).amps('Heron'), 0, { abs: 5e-3 });
  });

  test('the gap proof counts such a way: a running road is live through a loco on another', () => {
    const moving = { deckRoads: 2, stablingRoads: 1, second: { roads: ['A', 'B', 'R'] } };
    const ground = groundOf(yardOf(moving));
    const { breaches } = proveGap(ground, [lost]);
    const q = breaches.find(({ road }) => road === 'Q');
    expect(q).toBeDefined();
    const alone = moment(
      { ...moving },
      {
        controller: 1,
        deck: q?.deckMm ?? 0,
        pin: q?.pin ?? 'out',
        switches: Object.fromEntries(Object.keys(q?.hands ?? {}).map((name) => [name, true])),
        faults: [lost]
      }
    );
    expect(liveRoads(alone.yard, alone.scene).has('Q')).toBe(false);
  });
});
