import { Sets, type Element } from '../circuit';
import { isOpen, isWire, type Change, type Named } from './patch';

/** Room for elements and nodes that changes add. */
const SPARE = 64;

const ints = (length: number): Int32Array => new Int32Array(length);

/**
 * A circuit in numbers. A few of its elements are changed and changed back again and again, to see
 * what of it still matters to somebody who looks at some nodes only.
 */
export class Net {
  /** Two nodes of each element. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly ohms: Float64Array;
  /** 1 where an element is a conductor. */
  readonly wire: Uint8Array;
  /** 1 where an element is there, and no open contact. */
  readonly whole: Uint8Array;
  readonly elements: (Element | undefined)[];
  /** Whole elements at each node, and the exclusive or of their numbers: of the last one left, that one. */
  readonly degree: Int32Array;
  readonly mix: Int32Array;
  private readonly base: (Element | undefined)[];
  private readonly sets: Sets;

  constructor(
    elements: readonly Element[],
    private readonly named: Named
  ) {
    const numbers = elements.map(({ id, a, b }) => {
      named.nodes.of(a);
      named.nodes.of(b);
      return named.elements.of(id);
    });
    const room = named.elements.size + SPARE;
    const nodes = named.nodes.size + SPARE;
    [this.a, this.b, this.ohms] = [ints(room), ints(room), new Float64Array(room)];
    [this.wire, this.whole] = [new Uint8Array(room), new Uint8Array(room)];
    [this.degree, this.mix] = [ints(nodes), ints(nodes)];
    this.sets = new Sets(nodes);
    this.elements = new Array<Element | undefined>(room).fill(undefined);
    elements.forEach((element, index) => this.put(numbers[index] ?? 0, element));
    this.base = [...this.elements];
  }

  /** Number of a node. */
  node(name: string): number {
    return this.named.nodes.of(name);
  }

  /** What `work` finds with these changes made; they are taken back after it. */
  changed<T>(changes: readonly Change[], work: () => T): T {
    for (const { element, now } of changes) this.put(element, now);
    const found = work();
    for (const { element } of changes) this.put(element, this.base[element]);
    return found;
  }

  private put(number: number, element: Element | undefined): void {
    if (this.whole[number] === 1) this.join(number, -1);
    this.elements[number] = element;
    this.whole[number] = isOpen(element) ? 0 : 1;
    if (element === undefined || this.whole[number] === 0) return;
    this.a[number] = this.node(element.a);
    this.b[number] = this.node(element.b);
    this.wire[number] = isWire(element) ? 1 : 0;
    this.ohms[number] = 'ohms' in element ? element.ohms : 0;
    this.join(number, 1);
  }

  private join(number: number, by: 1 | -1): void {
    for (const ends of [this.a, this.b]) {
      const node = ends[number] ?? 0;
      this.degree[node] = (this.degree[node] ?? 0) + by;
      this.mix[node] = (this.mix[node] ?? 0) ^ number;
    }
  }

  /** Nodes joined by conductors. */
  conductors(): Sets {
    const { sets, a, b, wire, whole } = this;
    sets.part();
    for (let e = 0; e < this.elements.length; e++) {
      if (whole[e] === 1 && wire[e] === 1) sets.join(a[e] ?? 0, b[e] ?? 0);
    }
    return sets;
  }

  /** Of each node that nothing joins to a source, or to one of these nodes, a node that stands for all joined to it; −1 for others. */
  dead(looked: readonly number[]): Int32Array {
    const { sets, a, b, whole, elements } = this;
    sets.part();
    for (let e = 0; e < elements.length; e++) if (whole[e] === 1) sets.join(a[e] ?? 0, b[e] ?? 0);
    const ends = elements.flatMap((each, e) => (each?.kind === 'source' ? [a[e] ?? 0] : []));
    const alive = new Set([...looked, ...ends].map((node) => sets.find(node)));
    return this.degree.map((_, node) => (alive.has(sets.find(node)) ? -1 : sets.find(node)));
  }
}
