import { Sets, type Element } from '../circuit';
import { isOpen, isWire, ohmsIn, type Change, type Named } from './patch';

/**
 * A circuit in numbers. A few of its elements are changed and changed back again and again, to see
 * what of it still matters to somebody who looks at some nodes only.
 */
export class Net {
  /** Two nodes of each element. */
  readonly a: number[] = [];
  readonly b: number[] = [];
  readonly ohms: number[] = [];
  /** Whether an element is a conductor. */
  readonly wire: boolean[] = [];
  /** Whether an element is there, and no open contact. */
  readonly whole: boolean[] = [];
  readonly elements: (Element | undefined)[] = [];
  private readonly base: readonly (Element | undefined)[];

  constructor(
    elements: readonly Element[],
    private readonly named: Named
  ) {
    for (const element of elements) this.put(named.elements.of(element.id), element);
    this.base = [...this.elements];
  }

  /** Number of a node. */
  node(name: string): number {
    return this.named.nodes.of(name);
  }

  /** How many nodes have a number. */
  get nodes(): number {
    return this.named.nodes.size;
  }

  /** What `work` finds with these changes made; they are taken back after it. */
  changed<T>(changes: readonly Change[], work: () => T): T {
    for (const { element, now } of changes) this.put(element, now);
    const found = work();
    for (const { element } of changes) this.put(element, this.base[element]);
    return found;
  }

  private put(number: number, element: Element | undefined): void {
    this.elements[number] = element;
    this.whole[number] = !isOpen(element);
    if (element === undefined || !this.whole[number]) return;
    this.a[number] = this.node(element.a);
    this.b[number] = this.node(element.b);
    this.wire[number] = isWire(element);
    this.ohms[number] = ohmsIn(element);
  }

  /** Nodes joined by conductors. */
  conductors(): Sets {
    return this.joined((e) => this.wire[e] === true);
  }

  /** 1 for each node that something joins to a source, or to one of these nodes. */
  alive(looked: readonly number[]): Uint8Array {
    const sets = this.joined(() => true);
    const alive = new Uint8Array(this.nodes);
    const sources = this.elements.flatMap((each, e) =>
      each?.kind === 'source' ? [this.a[e] ?? 0] : []
    );
    const roots = new Set([...looked, ...sources].map((node) => sets.find(node)));
    return alive.map((_, node) => (roots.has(sets.find(node)) ? 1 : 0));
  }

  private joined(isWay: (e: number) => boolean): Sets {
    const sets = new Sets(this.nodes);
    this.whole.forEach((isWhole, e) => {
      if (isWhole && isWay(e)) sets.join(this.a[e] ?? 0, this.b[e] ?? 0);
    });
    return sets;
  }
}
