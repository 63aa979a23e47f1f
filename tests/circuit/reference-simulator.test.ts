import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { CircuitError, solve } from '../../src/lib/circuit';
import type { Circuit, Solution } from '../../src/lib/circuit';
import { network } from './networks';
import { exactly } from './reference';
import { Simulator } from './simulator';
import { allowed, errorsOf, expectLimits, zeroOf } from './simulator-compare';
import { netlistOf } from './simulator-netlist';
import { yard } from './yards';

/** What the engine keeps against 300 digits where the simulator has no answer, of max(1 V, |V|). */
const exactVolts = 1e-11;

/** One family of circuits: how many were compared, and the worst of them. */
interface Tally {
  circuits: number;
  nodes: number;
  currents: number;
  /** Left out: the engine refuses them, as no current or voltage is determined. */
  refused: number;
  /** Where both disagree or the simulator gives up: 300 digits decide. */
  decided: number;
  volts: number;
  amps: number;
}

const simulator = new Simulator();
let mark = 0;

beforeAll(async () => {
  // The simulator says on the console where it fails; such circuits are counted here.
  for (const method of ['log', 'warn', 'error'] as const) {
    vi.spyOn(console, method).mockImplementation(() => undefined);
  }
  await simulator.start();
}, 30_000);
afterAll(() => vi.restoreAllMocks());

async function compare(circuit: Circuit, gmin: number, tally: Tally): Promise<void> {
  const solution = solvable(circuit);
  if (solution === undefined) {
    tally.refused++;
    return;
  }
  const zero = zeroOf(circuit);
  const netlist = netlistOf(circuit, solution, { zero, gmin, mark: ++mark });
  const answer = await simulator.operatingPoint(netlist.text, mark);
  const errors = answer && errorsOf(solution, netlist, zero, answer);
  if (!answer || !errors || errors.volts > allowed.volts || errors.amps > allowed.amps) {
    tally.decided++;
    decide(circuit, solution);
    return;
  }
  expectLimits(circuit, solution, netlist, answer);
  tally.circuits++;
  tally.nodes += netlist.volts.size;
  tally.currents += netlist.amps.size;
  tally.volts = Math.max(tally.volts, errors.volts);
  tally.amps = Math.max(tally.amps, errors.amps);
}

/**
 * Says which of two is wrong, by 300-digit arithmetic: in every case the simulator.
 *
 * It subtracts conductances: a node that hangs on a blocking junction or on 10 MΩ beside milliohms is
 * lost to rounding, often as a singular matrix without any answer. And below −3·ideality·Vt it puts
 * a power law for Shockley's, up to 5 % of the saturation current off: microvolts on megohms.
 */
function decide(circuit: Circuit, solution: Solution): void {
  const exact = exactly(circuit, solution);
  expect(exact?.island.size, 'nodes of the determined circuit').toBeGreaterThan(0);
  for (const [node, first] of exact?.island ?? []) {
    const expected = exact?.volts.get(node) ?? NaN;
    const off = Math.abs((solution.between(node, first) ?? NaN) - expected);
    expect(off, `node ${node}`).toBeLessThanOrEqual(exactVolts * Math.max(1, Math.abs(expected)));
  }
  for (const [id, expected] of exact?.amps ?? []) {
    const most = Math.max(allowed.amps * Math.abs(expected), allowed.floor);
    expect(Math.abs(solution.amps(id) - expected), id).toBeLessThanOrEqual(most);
  }
}

/** Undefined for a circuit that has no solution: loops of 0 Ω, currents without a way back. */
function solvable(circuit: Circuit): Solution | undefined {
  try {
    return solve(circuit);
  } catch (error) {
    if (error instanceof CircuitError && ['loop', 'way-back', 'diode'].includes(error.code))
      return undefined;
    throw error;
  }
}

async function compareAll(
  what: string,
  count: number,
  gmin: number,
  circuitOf: (seed: number) => Circuit
): Promise<Tally> {
  const none = { circuits: 0, nodes: 0, currents: 0, refused: 0, decided: 0 };
  const tally: Tally = { ...none, volts: 0, amps: 0 };
  for (let seed = 1; seed <= count; seed++) await compare(circuitOf(seed), gmin, tally);
  console.info(
    `${what}: ${String(tally.circuits)} circuits, ${String(tally.nodes)} nodes and ` +
      `${String(tally.currents)} currents agree; worst error ${tally.volts.toExponential(1)} of ` +
      `max(1 V, |V|), currents ${tally.amps.toExponential(1)} relative; by 300 digits the ` +
      `simulator is wrong in ${String(tally.decided)}; refused by the engine: ${String(tally.refused)}`
  );
  return tally;
}

describe('solve(circuit) against the reference simulator', { timeout: 60_000 }, () => {
  test('yards of 1–40 deck roads and 0–20 stabling roads, in random scenes with faults', async () => {
    // With less than 1e-12 S across dark lamps the simulator finds its matrix singular.
    const tally = await compareAll('Yards', 160, 1e-12, (seed) => {
      const way = (['chain', 'ring', 'star'] as const)[seed % 3] ?? 'chain';
      const [deck, stabling] = [1 + ((seed * 7) % 40), (seed * 5) % 21];
      return yard({
        seed,
        deck,
        stabling,
        lamps: seed % 2 === 0,
        return: way,
        faults: (seed >> 1) % 4
      });
    });
    expect(tally.circuits + tally.decided).toBe(160);
    expect(tally.decided).toBeLessThanOrEqual(2);
  });

  test('linear networks from 1 mΩ to 10 MΩ', async () => {
    const kinds = ['resistor', 'resistor', 'source', 'switch', 'motor', 'current'] as const;
    const tally = await compareAll('Linear networks', 250, 1e-25, (seed) => {
      const [nodes, elements] = [3 + (seed % 8), 4 + (seed % 17)];
      return network({ seed, nodes, elements, kinds, ideal: 0.15 });
    });
    expect(tally.circuits).toBeGreaterThan(200);
    expect(tally.decided).toBe(0);
  });

  test('networks with diodes and limits from 1 mΩ to 10 MΩ', async () => {
    const kinds = ['resistor', 'source', 'switch', 'diode', 'motor'] as const;
    const tally = await compareAll('Networks with bends', 250, 1e-25, (seed) => {
      const [nodes, elements] = [3 + (seed % 6), 4 + (seed % 13)];
      return network({ seed, nodes, elements, kinds, limited: 0.4, ideal: 0.1 });
    });
    expect(tally.circuits).toBeGreaterThan(220);
    expect(tally.decided).toBeLessThanOrEqual(12);
  });
});
