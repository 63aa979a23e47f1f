import { Sets, type Element } from '../circuit';
import { isOpen, type Change } from './patch';

const isWire = ({ kind }: Element): boolean => kind === 'resistor' || kind === 'switch';

/** Room for what changes add: elements and nodes. */
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
  private readonly base: readonly Element[];
  private readonly numbers = new Map<string, number>();
  private readonly names = new Map<string, number>();
  private readonly sets: Sets;

  constructor(elements: readonly Element[]) {
    this.base = elements;
    this.elements = [...elements];
    const room = elements.length + SPARE;
    [this.a, this.b, this.ohms] = [ints(room), ints(room), new Float64Array(room)];
    [this.wire, this.whole] = [new Uint8Array(room), new Uint8Array(room)];
    for (const { a, b } of elements) for (const name of [a, b]) this.node(name);
    const nodes = this.names.size + SPARE;
    [this.degree, this.mix] = [ints(nodes), ints(nodes)];
    this.sets = new Sets(nodes);
    elements.forEach((element, number) => {
      this.numbers.set(element.id, number);
      this.put(number, element);
    });
  }

  /** Number of a node. */
  node(name: string): number {
    const known = this.names.get(name);
    if (known !== undefined) return known;
    const number = this.names.size;
    this.names.set(name, number);
    return number;
  }

  /** What `work` finds with these changes made; they are taken back after it. */
  changed<T>(changes: readonly Change[], work: () => T): T {
    const numbers = changes.map(({ id, now }) => {
      const number = this.numbers.get(id) ?? this.elements.length;
      this.put(number, now);
      return number;
    });
    const found = work();
    for (const number of numbers) this.put(number, this.base[number]);
    this.elements.length = this.base.length;
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

  /** 1 for each node that nothing joins to a source, or to one of these nodes. */
  dead(looked: readonly number[]): Uint8Array {
    const { sets, a, b, whole, elements } = this;
    sets.part();
    elements.forEach((_, e) => whole[e] === 1 && sets.join(a[e] ?? 0, b[e] ?? 0));
    const ends = elements.flatMap((each, e) => (each?.kind === 'source' ? [a[e] ?? 0] : []));
    const alive = new Set([...looked, ...ends].map((node) => sets.find(node)));
    return new Uint8Array(this.degree.length).map((_, node) =>
      alive.has(sets.find(node)) ? 0 : 1
    );
  }
}
