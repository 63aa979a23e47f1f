import type { Element } from '../circuit';

/** A size that is known to lie between two bounds, and can be worked out. */
export interface Range {
  readonly low: number;
  readonly high: number;
  readonly exact: () => number;
}

/** A size that is known. */
export const known = (size: number): Range => ({ low: size, high: size, exact: () => size });

interface Edge {
  readonly to: string;
  readonly ohms: number;
}

/** Ohms in series along the ways from node to node; a diode or a load is no way. */
export class Ways {
  private readonly edges = new Map<string, Edge[]>();
  private readonly from = new Map<string, ReadonlyMap<string, number>>();

  constructor(elements: readonly Element[]) {
    for (const element of elements) {
      if (element.kind === 'diode' || element.kind === 'motor' || element.kind === 'current')
        continue;
      this.add(element.a, { to: element.b, ohms: element.ohms });
      this.add(element.b, { to: element.a, ohms: element.ohms });
    }
  }

  private add(node: string, edge: Edge): void {
    const edges = this.edges.get(node);
    if (edges) edges.push(edge);
    else this.edges.set(node, [edge]);
  }

  /**
   * Ohms of one way between two nodes, Infinity for none. What lies between them has no more:
   * a further way never adds resistance. Source: Rayleigh's monotonicity law (P. G. Doyle and
   * J. L. Snell, Random Walks and Electric Networks, 1984, 1.4.1).
   */
  ohms(a: string, b: string): number {
    const all = this.from.get(b) ?? this.walk(b);
    this.from.set(b, all);
    return all.get(a) ?? Infinity;
  }

  private walk(start: string): ReadonlyMap<string, number> {
    const met = new Map([[start, 0]]);
    for (const [node, ohms] of met) {
      for (const edge of this.edges.get(node) ?? []) {
        if (!met.has(edge.to)) met.set(edge.to, ohms + edge.ohms);
      }
    }
    return met;
  }
}
