import { CircuitError, solve } from '../../src/lib/circuit';
import type { Circuit, Element } from '../../src/lib/circuit';
import { network } from './networks';
import { decades, drawFrom, pick, whole } from './random-numbers';
import type { Draw } from './random-numbers';

/** What became of many random circuits. */
export interface Fuzz {
  solved: number;
  /** How many were refused, by code. */
  readonly refused: Record<string, number>;
  /** Seeds whose answer was no finite number, or was refused without a reason. */
  readonly bad: number[];
}

const kinds = ['resistor', 'source', 'switch', 'diode', 'motor', 'current'] as const;

/** Solves random circuits of every kind, with limits and 0 Ω, by seed from `first` on. */
export function fuzz(first: number, count: number, circuitOf = usual): Fuzz {
  const result: Fuzz = { solved: 0, refused: {}, bad: [] };
  for (let seed = first; seed < first + count; seed++) one(circuitOf(seed), seed, result);
  return result;
}

/** Sizes that circuits have; every third seed with current sources. */
export function usual(seed: number): Circuit {
  const [nodes, elements] = [2 + (seed % 9), 1 + (seed % 19)];
  const some = seed % 3 === 0 ? kinds : kinds.slice(0, 5);
  return network({ seed, nodes, elements, kinds: some, limited: 0.4, ideal: 0.1 });
}

/** Sizes from 1e-60 to 1e30, as far as they are accepted, EMFs and currents from 1e-300. */
export function extreme(seed: number): Circuit {
  const draw = drawFrom(seed);
  const nodes = whole(draw, 2, 6);
  const node = (): string => String(whole(draw, 0, nodes - 1));
  const elements = Array.from(
    { length: whole(draw, 1, 10) },
    (_, n) => ({ id: `E${String(n)}`, a: node(), b: node(), ...extremeValues(draw) }) as Element
  );
  return {
    ground: '0',
    elements: [{ kind: 'resistor', id: 'tie', a: '0', b: '1', ohms: 1 }, ...elements]
  };
}

function extremeValues(draw: Draw): object {
  const size = (): number => decades(draw, -60, 30);
  const signed = (): number => (draw() < 0.5 ? -1 : 1) * decades(draw, -300, 30);
  const limit = draw() < 0.4 ? { limit: size() } : {};
  const values = {
    ohms: size(),
    closed: draw() < 0.6,
    volts: signed(),
    emf: signed(),
    amps: signed()
  };
  return { kind: pick(draw, kinds), ...values, ...limit, saturation: size(), ideality: size() };
}

function one(circuit: Circuit, seed: number, result: Fuzz): void {
  try {
    const s = solve(circuit);
    const fine = circuit.elements.every(
      ({ id, a, b }) => Number.isFinite(s.amps(id)) && Number.isFinite(s.between(a, b) ?? 0)
    );
    if (fine) result.solved++;
    else result.bad.push(seed);
  } catch (error) {
    if (!(error instanceof CircuitError)) result.bad.push(seed);
    else result.refused[error.code] = (result.refused[error.code] ?? 0) + 1;
  }
}
