import { Sets, type Element } from '../circuit';
import { once } from '../yard';
import type { Net } from './net';

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

/**
 * Takes a circuit apart: no open contacts, and nothing that dangles at one end where nobody looks, for
 * it carries nothing; conductors in series become one. The volts between the nodes looked at, and what
 * flows through anything held there, are those of the whole circuit.
 */
export class Kernels {
  private readonly degree: Int32Array;
  private readonly mix: Int32Array;
  /** The turn in which each element was taken away or followed, and each node looked at. */
  private readonly done: Int32Array;
  private readonly kept: Int32Array;
  /** Island of each node, and its name there. */
  private readonly island: Int32Array;
  private readonly name: Int32Array;
  private readonly sets: Sets;
  private readonly loose: number[] = [];
  private turn = 0;

  constructor(private readonly net: Net) {
    const nodes = (): Int32Array => new Int32Array(net.degree.length);
    [this.degree, this.mix, this.kept] = [nodes(), nodes(), nodes()];
    [this.island, this.name] = [nodes(), nodes()];
    this.sets = new Sets(net.degree.length);
    this.done = new Int32Array(net.whole.length);
  }

  /** The kernel of the circuit as it stands, for these nodes. */
  of(looked: readonly number[]): Kernel {
    this.strip(looked);
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

  /** 1 for each element that matters to these nodes, by its number. */
  left(looked: readonly number[]): Uint8Array {
    this.strip(looked);
    return this.net.whole.map((_, e) => (this.isLeft(e) ? 1 : 0));
  }

  private strip(looked: readonly number[]): void {
    const { net, degree, mix, done, kept, loose } = this;
    this.turn += 1;
    degree.set(net.degree);
    mix.set(net.mix);
    for (const node of looked) kept[node] = this.turn;
    for (let node = 0; node < degree.length; node++) if (this.isLoose(node)) loose.push(node);
    for (let node = loose.pop(); node !== undefined; node = loose.pop()) {
      if (!this.isLoose(node)) continue;
      const e = mix[node] ?? 0;
      done[e] = this.turn;
      this.part(net.a[e] ?? 0, e);
      this.part(net.b[e] ?? 0, e);
    }
  }

  private isLoose(node: number): boolean {
    return this.degree[node] === 1 && this.kept[node] !== this.turn;
  }

  private part(node: number, e: number): void {
    this.degree[node] = (this.degree[node] ?? 0) - 1;
    this.mix[node] = (this.mix[node] ?? 0) ^ e;
    if (this.isLoose(node)) this.loose.push(node);
  }

  private isLeft(e: number): boolean {
    return this.net.whole[e] === 1 && this.done[e] !== this.turn;
  }

  private chains(): readonly Chain[] {
    const { net, done } = this;
    const chains: Chain[] = [];
    for (let e = 0; e < net.elements.length; e++) {
      if (!this.isLeft(e)) continue;
      done[e] = this.turn;
      let [a, b, ohms] = [net.a[e] ?? 0, net.b[e] ?? 0, 0];
      if (net.wire[e] === 1) {
        ohms = net.ohms[e] ?? 0;
        for (let f = this.beyond(b, e); f >= 0; f = this.beyond(b, f)) {
          ohms += net.ohms[f] ?? 0;
          b = this.far(f, b);
        }
        for (let f = this.beyond(a, e); f >= 0; f = this.beyond(a, f)) {
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
    if (this.net.wire[f] !== 1 || !this.isLeft(f)) return -1;
    this.done[f] = this.turn;
    return f;
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
      if (net.wire[element] === 1) ohms += ` ${grains}`;
      else shape += textOf(net.elements[element] as Element);
      shape += '|';
    }
    return { shape, key: shape + ohms };
  }

  private elementOf({ element, a, b, grains }: Chain): Element {
    const { net, name } = this;
    const ends = { a: String(name[a]), b: String(name[b]) };
    const it = net.elements[element] as Element;
    if (net.wire[element] !== 1) return { ...it, ...ends };
    return { kind: 'switch', id: `chain ${element}`, ...ends, closed: true, ohms: grains * GRAIN };
  }
}
