import { Sets, type Element } from '../circuit';
import { once } from '../yard';
import type { Net } from './net';
import { isOpen, isWire, ohmsIn, type Change } from './patch';

/** To this the ohms of conductors in series are rounded, Ω; the shortest link has a million times as many. */
const GRAIN = 1e-9;

/** A part of a circuit that shares no node with the rest. */
export interface Island {
  /** One text for all islands that are alike but for the ohms of their chains. */
  readonly shape: string;
  /** One text for all islands that are alike. */
  readonly key: string;
  /** Its elements, conductors in series as one, their nodes by name; to be asked for before the next kernel is. */
  readonly elements: () => readonly Element[];
}

/** Where a node looked at lies: the number of its island, and its name there, which is `0`, `1`, … */
export interface Place {
  readonly island: number;
  readonly name: string;
}

/** What of a circuit matters to somebody who looks at some nodes only. */
export interface Kernel {
  readonly islands: readonly Island[];
  /** The nodes looked at, in their order. */
  readonly seen: readonly Place[];
}

interface Chain {
  readonly element: number;
  readonly a: number;
  readonly b: number;
  readonly grains: number;
}

/** An element but for its nodes. */
const textOf = once((element: Element): string =>
  JSON.stringify({ ...element, a: undefined, b: undefined })
);

const ints = (length: number): Int32Array => new Int32Array(length);

/**
 * Takes a circuit apart: no open contacts, and nothing that dangles at one end where nobody looks, for
 * it carries nothing; conductors in series become one. The volts between the nodes looked at, and what
 * flows through anything held there, are those of the whole circuit.
 *
 * What dangles in the circuit as it stands at first hangs on the rest like the branches of a tree. A
 * change brings back those branches alone that lead to it, so that no other is looked at again.
 */
export class Kernels {
  /** Of each element of the first circuit that matters to the nodes looked at first the chain of which it is a part, by its first element. */
  private readonly core: ReadonlyMap<number, number>;
  /** Of each node of that circuit's branches the element by which it hangs on the rest. */
  private readonly hangs: readonly number[];
  /** The turn in which each element, or node, was last met, and each was taken away or followed, or looked at. */
  private metElements = ints(0);
  private metNodes = ints(0);
  private done = ints(0);
  /** Of each element the first one of its chain. */
  private chain = ints(0);
  private kept = ints(0);
  /** Whole elements at each node, and the exclusive or of their numbers: of the last one left, that one. */
  private degree = ints(0);
  private mix = ints(0);
  /** Island of each node, and its name there. */
  private island = ints(0);
  private name = ints(0);
  private sets = new Sets(0);
  private nodes: number[] = [];
  private turn = 0;

  constructor(
    private readonly net: Net,
    looked: readonly number[]
  ) {
    this.begin(looked);
    net.whole.forEach((_, e) => this.meet(e));
    const hangs: number[] = [];
    this.strip((node, e) => (hangs[node] = e));
    this.hangs = hangs;
    const left = [...net.whole.keys()].filter((e) => this.isLeft(e));
    this.chains();
    this.core = new Map(left.map((e) => [e, this.chain[e] ?? 0]));
  }

  /** Elements of the first circuit that matter to the nodes looked at first. */
  get mattering(): Iterable<number> {
    return this.core.keys();
  }

  /**
   * One text for all changes that join nothing new and leave the same kernel, for the nodes looked at
   * first; empty where they change nothing of it. Undefined where it has to be worked out.
   */
  effect(changes: readonly Change[]): string | undefined {
    let text = '';
    for (const { element, now } of changes) {
      const chain = this.core.get(element);
      if (chain === undefined) continue;
      text += ` ${chain}`;
      if (now === undefined || isOpen(now)) text += ' open';
      else if (!isWire(now)) return undefined;
      else text += ` ${Math.round((ohmsIn(now) - (this.net.ohms[element] ?? 0)) / GRAIN)}`;
    }
    return text;
  }

  /** The kernel of the circuit with these changes made, for these nodes. */
  of(looked: readonly number[], changes: readonly Change[]): Kernel {
    this.begin(looked);
    for (const { element } of changes) this.meet(element);
    for (const e of this.core.keys()) this.meet(e);
    for (const { ends } of changes) for (const node of ends) this.climb(node);
    for (const node of looked) this.climb(node);
    this.strip(() => undefined);
    const chains = this.chains();
    const counts = this.call(looked, chains);
    const parts = counts.map((): Chain[] => []);
    for (const chain of chains) parts[this.island[chain.a] ?? 0]?.push(chain);
    return {
      islands: parts.map((part) => ({
        ...this.keysOf(part),
        elements: () => part.map((chain) => this.elementOf(chain))
      })),
      seen: looked.map((node) => ({
        island: this.island[node] ?? 0,
        name: String(this.name[node])
      }))
    };
  }

  private begin(looked: readonly number[]): void {
    this.fit();
    this.turn += 1;
    this.nodes = [];
    for (const node of looked) this.kept[node] = this.turn;
  }

  /** Makes room for nodes and elements that changes have added. */
  private fit(): void {
    const { nodes, whole } = this.net;
    if (this.degree.length < nodes) {
      [this.metNodes, this.kept] = [ints(nodes), ints(nodes)];
      [this.degree, this.mix] = [ints(nodes), ints(nodes)];
      [this.island, this.name] = [ints(nodes), ints(nodes)];
      this.sets = new Sets(nodes);
    }
    if (this.done.length < whole.length)
      [this.metElements, this.done, this.chain] = [
        ints(whole.length),
        ints(whole.length),
        ints(whole.length)
      ];
  }

  /** Takes an element up, unless it was met before. */
  private meet(e: number): void {
    const { net, turn } = this;
    if (this.metElements[e] === turn) return;
    this.metElements[e] = turn;
    if (!net.whole[e]) return;
    this.add(net.a[e] ?? 0, e);
    this.add(net.b[e] ?? 0, e);
  }

  private add(node: number, e: number): void {
    const { degree, mix, turn } = this;
    if (this.metNodes[node] !== turn) {
      this.metNodes[node] = turn;
      this.nodes.push(node);
      [degree[node], mix[node]] = [0, 0];
    }
    degree[node] = (degree[node] ?? 0) + 1;
    mix[node] = (mix[node] ?? 0) ^ e;
  }

  /** Takes up all by which a node hangs on the rest. */
  private climb(node: number): void {
    for (
      let at = node, e = this.hangs[at];
      e !== undefined && this.metElements[e] !== this.turn;
      e = this.hangs[at]
    ) {
      this.meet(e);
      at = this.far(e, at);
    }
  }

  /** Takes away what dangles, and says of each node that lost its last element so which that was. */
  private strip(told: (node: number, e: number) => void): void {
    const { net, mix, done } = this;
    const loose = this.nodes.filter((node) => this.isLoose(node));
    for (let node = loose.pop(); node !== undefined; node = loose.pop()) {
      if (!this.isLoose(node)) continue;
      const e = mix[node] ?? 0;
      told(node, e);
      done[e] = this.turn;
      for (const end of [net.a[e] ?? 0, net.b[e] ?? 0]) {
        this.part(end, e);
        if (this.isLoose(end)) loose.push(end);
      }
    }
  }

  private isLoose(node: number): boolean {
    return this.degree[node] === 1 && this.kept[node] !== this.turn;
  }

  private part(node: number, e: number): void {
    this.degree[node] = (this.degree[node] ?? 0) - 1;
    this.mix[node] = (this.mix[node] ?? 0) ^ e;
  }

  private isLeft(e: number): boolean {
    return (
      this.metElements[e] === this.turn && this.net.whole[e] === true && this.done[e] !== this.turn
    );
  }

  private chains(): readonly Chain[] {
    const { net } = this;
    const chains: Chain[] = [];
    for (let e = 0; e < net.elements.length; e++) {
      if (!this.isLeft(e)) continue;
      this.follow(e, e);
      let [a, b, ohms] = [net.a[e] ?? 0, net.b[e] ?? 0, 0];
      if (net.wire[e]) {
        ohms = net.ohms[e] ?? 0;
        for (let f = this.beyond(b, e); f >= 0; f = this.beyond(b, f)) {
          this.follow(f, e);
          ohms += net.ohms[f] ?? 0;
          b = this.far(f, b);
        }
        for (let f = this.beyond(a, e); f >= 0; f = this.beyond(a, f)) {
          this.follow(f, e);
          ohms += net.ohms[f] ?? 0;
          a = this.far(f, a);
        }
        if (a === b) continue;
      }
      chains.push({ element: e, a, b, grains: Math.round(ohms / GRAIN) });
    }
    return chains;
  }

  /** The conductor that goes on from a node where `e` ends and nothing else is; −1 for none. */
  private beyond(node: number, e: number): number {
    if (this.degree[node] !== 2 || this.kept[node] === this.turn) return -1;
    const f = (this.mix[node] ?? 0) ^ e;
    return this.net.wire[f] && this.isLeft(f) ? f : -1;
  }

  private follow(e: number, chain: number): void {
    this.done[e] = this.turn;
    this.chain[e] = chain;
  }

  private far(e: number, node: number): number {
    const { a, b } = this.net;
    return (a[e] === node ? b[e] : a[e]) ?? 0;
  }

  /** Gives each node its island and its name there, those looked at first; how many nodes each island has. */
  private call(looked: readonly number[], chains: readonly Chain[]): readonly number[] {
    const { island, name, sets } = this;
    sets.part();
    for (const { a, b } of chains) sets.join(a, b);
    island.fill(-1);
    name.fill(-1);
    const counts: number[] = [];
    const call = (node: number) => {
      if (name[node] !== -1) return;
      const root = sets.find(node);
      if (island[root] === -1) island[root] = counts.push(0) - 1;
      const at = island[root] ?? 0;
      island[node] = at;
      name[node] = counts[at] ?? 0;
      counts[at] = (counts[at] ?? 0) + 1;
    };
    looked.forEach(call);
    for (const { a, b } of chains) {
      call(a);
      call(b);
    }
    return counts;
  }

  private keysOf(part: readonly Chain[]): Pick<Island, 'shape' | 'key'> {
    const { net, name } = this;
    let [shape, ohms] = ['', ''];
    for (const { element, a, b, grains } of part) {
      shape += `${name[a]} ${name[b]}`;
      if (net.wire[element]) ohms += ` ${grains}`;
      else shape += textOf(net.elements[element] as Element);
      shape += '|';
    }
    return { shape, key: shape + ohms };
  }

  private elementOf({ element, a, b, grains }: Chain): Element {
    const { net, name } = this;
    const ends = { a: String(name[a]), b: String(name[b]) };
    const it = net.elements[element] as Element;
    if (!net.wire[element]) return { ...it, ...ends };
    return { kind: 'switch', id: `chain ${element}`, ...ends, closed: true, ohms: grains * GRAIN };
  }
}
