import type { Circuit } from '../../src/lib/circuit';

/**
 * The textbook's way, to compare with: the whole nodal matrix and Gaussian elimination, linear
 * elements only, every node held to ground by 1e-12 S so that it has an answer.
 *
 * Source: e.g. Davis, Direct Methods for Sparse Linear Systems (2006), ch. 1.
 */
export function denseSolve({ ground, elements }: Circuit): Float64Array {
  const nodes = new Map<string, number>();
  const at = (name: string): number => {
    if (name === ground) return -1;
    const known = nodes.get(name);
    if (known !== undefined) return known;
    nodes.set(name, nodes.size);
    return nodes.size - 1;
  };
  const ends = elements.map(({ a, b }) => [at(a), at(b)] as const);
  const size = nodes.size;
  const matrix = Array.from({ length: size }, () => new Float64Array(size + 1));
  const add = (r: number, c: number, value: number): void => {
    const row = matrix[r];
    if (row !== undefined && c >= 0) row[c] = (row[c] ?? 0) + value;
  };
  for (let n = 0; n < size; n++) add(n, n, 1e-12);
  elements.forEach((e, n) => {
    const [a, b] = ends[n] ?? [-1, -1];
    const ohms = e.kind === 'switch' && !e.closed ? Infinity : 'ohms' in e ? e.ohms : Infinity;
    const emf = e.kind === 'source' ? e.volts : e.kind === 'motor' ? e.emf : 0;
    const g = 1 / ohms;
    add(a, a, g);
    add(b, b, g);
    if (a >= 0 && b >= 0) {
      add(a, b, -g);
      add(b, a, -g);
    }
    add(a, size, g * emf);
    add(b, size, -g * emf);
  });
  return eliminated(matrix, size);
}

function eliminated(matrix: Float64Array[], size: number): Float64Array {
  for (let k = 0; k < size; k++) {
    const pivot = matrix[k] ?? new Float64Array();
    for (let r = k + 1; r < size; r++) {
      const row = matrix[r] ?? new Float64Array();
      const factor = (row[k] ?? 0) / (pivot[k] ?? 1);
      if (factor === 0) continue;
      for (let c = k; c <= size; c++) row[c] = (row[c] ?? 0) - factor * (pivot[c] ?? 0);
    }
  }
  const x = new Float64Array(size);
  for (let k = size - 1; k >= 0; k--) {
    const row = matrix[k] ?? new Float64Array();
    let sum = row[size] ?? 0;
    for (let c = k + 1; c < size; c++) sum -= (row[c] ?? 0) * (x[c] ?? 0);
    x[k] = sum / (row[k] ?? 1);
  }
  return x;
}
