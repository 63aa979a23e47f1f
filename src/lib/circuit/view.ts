/* eslint-disable @typescript-eslint/no-non-null-assertion -- a kernel: every index is from its chains */
import { dead, ideal } from './chains';
import { elementAmps, ownAmps } from './currents';
import { unknownElement, unknownNode } from './errors';
import type { Network } from './network';
import type { Solution } from './solution';

/**
 * A network's numbers as a `Solution`, worked out from its core nodes when asked for.
 *
 * It shows the network as it stands: after another solve, that one.
 */
export class View implements Solution {
  private balanced: Float64Array | undefined;

  constructor(private network: Network) {}

  /** Shows a network that has been solved. */
  show(network: Network): this {
    this.network = network;
    this.balanced = undefined;
    return this;
  }

  volts(node: string): number | undefined {
    return this.difference(this.index(node), 0);
  }

  between(a: string, b: string): number | undefined {
    return this.difference(this.index(a), this.index(b));
  }

  amps(id: string): number {
    const { netlist, chains } = this.network;
    const e = netlist.ids.get(id) ?? unknownElement(id);
    const n = chains.branch[e]!;
    if (n === dead) return 0;
    return n === ideal ? this.allAmps()[e]! : chains.sense[e]! * this.branchAmps(n, e);
  }

  get floating(): readonly string[] {
    const { nodes } = this.network.netlist;
    const ground = this.island(0);
    return [...nodes].filter(([, at]) => this.island(at) !== ground).map(([node]) => node);
  }

  get limiting(): readonly string[] {
    const { netlist, stand } = this.network;
    return netlist.elements.filter((_, e) => stand.mode[e] !== 0).map(({ id }) => id);
  }

  private index(node: string): number {
    return this.network.netlist.nodes.get(node) ?? unknownNode(node);
  }

  private difference(a: number, b: number): number | undefined {
    if (this.island(a) !== this.island(b)) return undefined;
    return this.potential(a) - this.potential(b);
  }

  private allAmps(): Float64Array {
    return (this.balanced ??= elementAmps(this.network));
  }

  private branchAmps(n: number, e: number): number {
    return ownAmps(this.network, n) ?? this.network.chains.sense[e]! * this.allAmps()[e]!;
  }

  /** Reference of a node's island: a core node, or beyond those what hangs behind an open switch. */
  private island(node: number): number {
    const { netlist, ideal: groups, chains, elimination } = this.network;
    let group = groups.group[node]!;
    for (let e = chains.stem[group]!; e >= 0; e = chains.stem[group]!) {
      if (netlist.ohms[e] === Infinity) return chains.cores + chains.member.length + group;
      group = this.beyond(e, group);
    }
    const core = chains.core[group]!;
    if (core >= 0) return elimination.island[core]!;
    const n = chains.inside[group]!;
    const [before, after] = this.openAround(n, chains.place[group]!);
    if (before < 0) return elimination.island[chains.a[n]!]!;
    if (after < 0) return elimination.island[chains.b[n]!]!;
    return chains.cores + before;
  }

  /** The group at the other end of an element. */
  private beyond(e: number, group: number): number {
    const { netlist, ideal: groups } = this.network;
    const a = groups.group[netlist.a[e]!]!;
    return a === group ? groups.group[netlist.b[e]!]! : a;
  }

  /** Members without connection before and after a place in branch n: the nearest, −1 for none. */
  private openAround(n: number, place: number): [before: number, after: number] {
    const { netlist, chains } = this.network;
    const [from, to] = [chains.start[n]!, chains.start[n + 1]!];
    let before = from + place - 1;
    while (before >= from && netlist.ohms[chains.member[before]!]! < Infinity) before--;
    let after = from + place;
    while (after < to && netlist.ohms[chains.member[after]!]! < Infinity) after++;
    return [before < from ? -1 : before, after < to ? after : -1];
  }

  private potential(node: number): number {
    const { netlist, ideal: groups, chains, elimination, offset, drop } = this.network;
    let group = groups.group[node]!;
    let sum = offset[node]!;
    for (let e = chains.stem[group]!; e >= 0; e = chains.stem[group]!) {
      if (netlist.ohms[e] === Infinity) return sum;
      sum += groups.group[netlist.a[e]!] === group ? drop[e]! : -drop[e]!;
      group = this.beyond(e, group);
    }
    const core = chains.core[group]!;
    return sum + (core >= 0 ? elimination.volts[core]! : this.inside(group));
  }

  /** Potential of a group inside a branch, from the end it hangs on. */
  private inside(group: number): number {
    const { chains, elimination, branches } = this.network;
    const n = chains.inside[group]!;
    const place = chains.start[n]! + chains.place[group]!;
    const { volts } = elimination;
    if (branches.ohms[n] === Infinity) {
      const [before, after] = this.openAround(n, chains.place[group]!);
      if (before < 0) return volts[chains.a[n]!]! - this.dropAlong(chains.start[n]!, place, 0);
      if (after < 0) return volts[chains.b[n]!]! + this.dropAlong(place, chains.start[n + 1]!, 0);
      return -this.dropAlong(before + 1, place, 0);
    }
    const amps = ownAmps(this.network, n) ?? this.branchAmps(n, chains.member[place]!);
    const bend = chains.bend[n]!;
    let junction = chains.start[n]!;
    while (junction < place && chains.member[junction] !== bend) junction++;
    return junction === place
      ? volts[chains.a[n]!]! - this.dropAlong(chains.start[n]!, place, amps)
      : volts[chains.b[n]!]! + this.dropAlong(place, chains.start[n + 1]!, amps);
  }

  /** Drop over members from … to−1 of a branch that carries a current, junctions left out. */
  private dropAlong(from: number, to: number, amps: number): number {
    const { netlist, chains, drop } = this.network;
    let sum = 0;
    for (let m = from; m < to; m++) {
      const e = chains.member[m]!;
      sum += chains.sense[e]! * drop[e]! + (amps === 0 ? 0 : amps * netlist.ohms[e]!);
    }
    return sum;
  }
}
