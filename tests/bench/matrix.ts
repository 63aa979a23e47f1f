import { LU, Matrix } from 'ml-matrix';
import { lusolve, slu, sparse } from 'mathjs';
import type { Circuit } from '../../src/lib/circuit';

/** A linear circuit as nodal equations, every node held to ground by 1e-12 S. */
export interface Nodal {
  readonly nodes: ReadonlyMap<string, number>;
  readonly matrix: number[][];
  readonly right: number[];
  /** Rows and columns of each element's two nodes, −1 for ground. */
  readonly ends: ReadonlyMap<string, readonly [a: number, b: number]>;
}

const held = 1e-12;

/** Source: e.g. Davis, Direct Methods for Sparse Linear Systems (2006), ch. 1. */
export function nodalOf({ ground, elements }: Circuit): Nodal {
  const names = new Set(elements.flatMap(({ a, b }) => [a, b]));
  names.delete(ground);
  const nodes = new Map([...names].map((name, n) => [name, n]));
  const right = Array.from(nodes, () => 0);
  const matrix = right.map((_, r) => right.map((_, c) => (r === c ? held : 0)));
  const nodal = { nodes, matrix, right, ends: new Map<string, [number, number]>() };
  for (const e of elements) {
    const [a, b] = [nodes.get(e.a) ?? -1, nodes.get(e.b) ?? -1];
    nodal.ends.set(e.id, [a, b]);
    const closed = e.kind !== 'switch' || e.closed;
    const g = closed && 'ohms' in e ? 1 / e.ohms : 0;
    const emf = e.kind === 'source' ? e.volts : e.kind === 'motor' ? e.emf : 0;
    for (const [r, c, value] of stamps(a, b, g)) add(matrix[r], c, value);
    add(right, a, g * emf);
    add(right, b, -g * emf);
  }
  return nodal;
}

const add = (row: number[] | undefined, at: number, value: number): void => {
  if (row !== undefined && at >= 0) row[at] = (row[at] ?? 0) + value;
};

/** What a conductance between two nodes adds, and where. */
const stamps = (a: number, b: number, g: number): [row: number, column: number, value: number][] =>
  (
    [
      [a, a, g],
      [b, b, g],
      [a, b, -g],
      [b, a, -g]
    ] as [number, number, number][]
  ).filter(([r, c]) => r >= 0 && c >= 0);

/** Changes one element's conductance by g and gives every node's voltage. */
export type Flip = (id: string, g: number) => readonly number[];

/** Dense LU with pivoting. */
export function denseLu({ matrix, right, ends }: Nodal): Flip {
  const a = new Matrix(matrix);
  const b = Matrix.columnVector(right);
  return (id, g) => {
    for (const [r, c, value] of stamps(...(ends.get(id) ?? [-1, -1]), g)) {
      a.set(r, c, a.get(r, c) + value);
    }
    return new LU(a).solve(b).to1DArray();
  };
}

/** Minimum degree of A + Aᵀ, and the diagonal as pivot unless it is smaller than this share. */
const order = 1;
const threshold = 1e-3;

/** Sparse LU. */
export function sparseLu({ matrix, right, ends }: Nodal): Flip {
  const a = sparse(matrix);
  const b = right.map((value) => [value]);
  return (id, g) => {
    for (const [r, c, value] of stamps(...(ends.get(id) ?? [-1, -1]), g)) {
      a.set([r, c], (a.get([r, c]) as number) + value);
    }
    return (lusolve(slu(a, order, threshold), b).toArray() as number[][]).map(([v]) => v ?? NaN);
  };
}
