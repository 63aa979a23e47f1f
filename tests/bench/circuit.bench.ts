import { bench } from 'vitest';
import { Netlist } from '../../src/lib/circuit/netlist';
import { Network } from '../../src/lib/circuit/network';
import { Stand } from '../../src/lib/circuit/branches';
import { prepare, solve } from '../../src/lib/circuit';
import type { Circuit } from '../../src/lib/circuit';
import { fuzz } from '../circuit/fuzz';
import { yard } from '../circuit/yards';
import type { YardOptions } from '../circuit/yards';
import { denseSolve } from './dense';
import { micros } from './micros';

const sizes = [
  [7, 4],
  [24, 12],
  [100, 50],
  [400, 200]
] as const;
/** One toggle thrown, and its lamp's pole if it has one, and the yard solved. */
function flip(circuit: Circuit, roads: number, lamps: boolean): number {
  const prepared = prepare(circuit);
  return micros(Math.ceil(20000 / roads), (n) => {
    const change = { closed: n % 2 === 0 };
    prepared.set(`toggle ${String(n % roads)}`, change);
    if (lamps) prepared.set(`pole ${String(n % roads)}`, change);
    prepared.solve();
  });
}

/** Every law, every node and every voltage anew. */
function whole(circuit: Circuit, roads: number): number {
  const netlist = new Netlist(circuit);
  const network = new Network(netlist, new Stand(netlist));
  return micros(Math.ceil(20000 / roads), () => {
    for (let branch = 0; branch < network.chains.a.length; branch++) network.change(branch);
    network.step();
  });
}

function row(options: YardOptions): Record<string, number | string> {
  const { deck, stabling } = options;
  const roads = deck + stabling;
  const circuit = yard(options);
  const flipped = flip(circuit, roads, false);
  const dense = roads > 60 ? NaN : micros(3, () => denseSolve(circuit));
  return {
    yard: `${String(deck)}+${String(stabling)}`,
    elements: circuit.elements.length,
    'flip, µs': round(flipped),
    'whole, µs': round(whole(circuit, roads)),
    'flip with lamps, µs': round(flip(yard({ ...options, lamps: true }), roads, true)),
    'solve from cold, µs': round(micros(Math.ceil(300 / roads), () => solve(circuit))),
    'whole matrix, µs': round(dense),
    'whole matrix / flip': round(dense / flipped)
  };
}

const round = (value: number): number => Number(value.toPrecision(3));

const settings = { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 };

/** Each measurement has its own rounds; the runner's repetitions would only take time. */
function measured(what: string, measure: () => void): void {
  let done = false;
  const run = (): void => {
    if (!done) measure();
    done = true;
  };
  bench(what, run, settings);
}

for (const [what, aligned] of [
  ['deck between roads: nothing joined across', 0],
  ['deck at home: three stabling roads in ten joined to the deck road they face', 0.3]
] as const) {
  measured(what, () => {
    const rows = sizes.map(([deck, stabling]) => row({ seed: 3, deck, stabling, aligned }));
    console.info(`\n${what}`);
    console.table(rows);
    const growth = (column: string): string => {
      const [small, large] = [Number(rows[1]?.[column]), Number(rows[3]?.[column])];
      return (Math.log(large / small) / Math.log(600 / 36)).toFixed(2);
    };
    for (const column of ['flip, µs', 'whole, µs', 'solve from cold, µs']) {
      console.info(`${column}: grows as roads^${growth(column)} from 36 to 600 roads`);
    }
  });
}

measured('100 000 random circuits', () => {
  const start = performance.now();
  const result = fuzz(1, 100_000);
  const seconds = ((performance.now() - start) / 1000).toFixed(0);
  console.info(`100 000 random circuits in ${seconds} s:`, result);
  if (result.bad.length > 0) throw new Error(`Seeds without an answer: ${result.bad.join(', ')}`);
});
