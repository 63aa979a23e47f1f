import { bench } from 'vitest';
import { prepare } from '../../src/lib/circuit';
import type { Circuit } from '../../src/lib/circuit';
import { yard } from '../circuit/yards';
import { denseLu, nodalOf, sparseLu } from './matrix';
import type { Flip, Nodal } from './matrix';
import { micros, processorTime } from './micros';
import { deckOf, native, web } from './simulators';

const sizes = [
  [7, 4],
  [24, 12],
  [100, 50],
  [400, 200]
] as const;
/** The largest yard that the dense matrix is given, roads. */
const denseRoads = 36;

/** µs by method, for one yard, or why there are none. */
type Column = Record<string, number | string>;

const toggle = (n: number): string => `toggle ${String(n)}`;

/** One toggle thrown and the yard solved, and the voltage of `nodes` asked for. */
function engine(circuit: Circuit, roads: number, nodes: readonly string[]): number {
  const prepared = prepare(circuit);
  return micros(Math.ceil(20000 / roads / (1 + nodes.length)), (n) => {
    prepared.set(toggle(n % roads), { closed: n % 2 === 0 });
    const solution = prepared.solve();
    for (const node of nodes) solution.volts(node);
  });
}

/** The same by a matrix; first it has to agree with the engine. */
function matrix(circuit: Circuit, nodal: Nodal, method: (nodal: Nodal) => Flip): number {
  const contact = circuit.elements.find(({ id }) => id === toggle(0));
  if (contact?.kind !== 'switch') throw new Error('No toggle.');
  const g = contact.closed ? -1 / contact.ohms : 1 / contact.ohms;
  const flip = method(nodal);
  const prepared = prepare(circuit);
  prepared.set(toggle(0), { closed: !contact.closed });
  const solution = prepared.solve();
  const volts = flip(toggle(0), g);
  for (const [node, at] of nodal.nodes) {
    const off = Math.abs((solution.volts(node) ?? volts[at] ?? NaN) - (volts[at] ?? NaN));
    if (!(off < 1e-6)) throw new Error(`${node} is ${String(off)} V off.`);
  }
  const options = { rounds: 3, clock: processorTime };
  return micros(
    Math.ceil(1000 / nodal.nodes.size),
    (n) => flip(toggle(0), n % 2 === 0 ? -g : g),
    options
  );
}

async function column(deck: number, stabling: number, aligned: number): Promise<Column> {
  const roads = deck + stabling;
  const { ground, elements } = yard({ seed: 3, deck, stabling, aligned });
  const circuit = {
    ground,
    elements: elements.map((e) => (e.kind === 'source' ? { ...e, limit: undefined } : e))
  };
  const nodal = nodalOf(circuit);
  const text = deckOf(circuit, [0, 1, 2, 3, 4].map(toggle));
  const hundreds = (count: number): number => Math.ceil(count / roads / 100) * 100;
  const counts = { flips: hundreds(10_000), points: hundreds(100_000) };
  const program = native(text, counts);
  const wasm = await web(text, counts);
  return {
    engine: engine(circuit, roads, []),
    'engine, every node read': engine(circuit, roads, [...nodal.nodes.keys()]),
    'dense LU (ml-matrix)': roads > denseRoads ? 'left out' : matrix(circuit, nodal, denseLu),
    'sparse LU (mathjs)': matrix(circuit, nodal, sparseLu),
    'reference simulator, alter + op': program?.flip ?? 'absent',
    'reference simulator, own sweep': program?.point ?? 'absent',
    'reference simulator, WASM, own sweep': wasm.point,
    'reference simulator, WASM, from text': wasm.run
  };
}

/** µs and how many times the engine's. */
const cell = (value: number | string, engine: number): string =>
  typeof value === 'string'
    ? value
    : `${value.toPrecision(3)} (×${(value / engine).toPrecision(3)})`;

let done = false;

async function compareMethods(): Promise<void> {
  if (done) return;
  done = true;
  for (const [what, aligned] of [
    ['deck between roads', 0],
    ['deck at home', 0.3]
  ] as const) {
    const rows: Record<string, Record<string, string>> = {};
    for (const [deck, stabling] of sizes) {
      const times = await column(deck, stabling, aligned);
      for (const [method, value] of Object.entries(times)) {
        const row = (rows[method] ??= {});
        row[`${String(deck)}+${String(stabling)}`] = cell(value, Number(times.engine));
      }
    }
    console.info(`\nOne switch flipped and solved, µs (times the engine's), ${what}:`);
    console.table(rows);
  }
}

bench('methods', compareMethods, { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 });
