import { CircuitError, solve } from '../../src/lib/circuit';
import { network } from './networks';

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
export function fuzz(first: number, count: number): Fuzz {
  const result: Fuzz = { solved: 0, refused: {}, bad: [] };
  for (let seed = first; seed < first + count; seed++) one(seed, result);
  return result;
}

function one(seed: number, result: Fuzz): void {
  const [nodes, elements] = [2 + (seed % 9), 1 + (seed % 19)];
  const some = seed % 3 === 0 ? kinds : kinds.slice(0, 5);
  const circuit = network({ seed, nodes, elements, kinds: some, limited: 0.4, ideal: 0.1 });
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
