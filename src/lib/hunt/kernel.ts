import type { Circuit, Element } from '../circuit';

/** A node's number and its count of elements, as the circuit is taken apart. */
class Nodes {
  private readonly numbers = new Map<string, number>();
  readonly kept: boolean[] = [];
  readonly degree: number[] = [];
  /** Exclusive or of the numbers of a node's elements: of the last one left, that one. */
  readonly last: number[] = [];

  of(name: string): number {
    const known = this.numbers.get(name);
    if (known !== undefined) return known;
    const number = this.numbers.size;
    this.numbers.set(name, number);
    this.kept.push(false);
    this.degree.push(0);
    this.last.push(0);
    return number;
  }

  join(node: number, element: number, by: 1 | -1): void {
    this.degree[node] = (this.degree[node] ?? 0) + by;
    this.last[node] = (this.last[node] ?? 0) ^ element;
  }
}

const isWhole = (element: Element): boolean => element.kind !== 'switch' || element.closed;

/**
 * What of a circuit matters to somebody who looks at some nodes only: without open contacts, and
 * without whatever dangles at one end where nobody looks, for it carries nothing. The volts
 * between those nodes, and what flows through anything held there, are those of the whole circuit.
 */
export function kernelOf({ elements }: Circuit, looked: Iterable<string>): readonly Element[] {
  const nodes = new Nodes();
  for (const name of looked) nodes.kept[nodes.of(name)] = true;
  const whole = elements.filter(isWhole);
  const ends = whole.map(({ a, b }) => [nodes.of(a), nodes.of(b)] as const);
  ends.forEach((pair, index) => pair.forEach((node) => nodes.join(node, index, 1)));
  const gone = new Uint8Array(whole.length);
  const isLoose = (node: number) => nodes.degree[node] === 1 && nodes.kept[node] === false;
  const loose = nodes.degree.flatMap((_, node) => (isLoose(node) ? [node] : []));
  for (let node = loose.pop(); node !== undefined; node = loose.pop()) {
    if (!isLoose(node)) continue;
    const index = nodes.last[node] ?? 0;
    gone[index] = 1;
    for (const end of ends[index] ?? []) {
      nodes.join(end, index, -1);
      if (isLoose(end)) loose.push(end);
    }
  }
  return whole.filter((_, index) => gone[index] === 0);
}
