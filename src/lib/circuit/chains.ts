import type { Ideal } from './ideal';
import type { Netlist } from './netlist';

/**
 * Elements in series as one branch each, between the nodes where anything else happens.
 *
 * A branch has at most one element that bends (a junction or a limit), so that it is itself a
 * resistance, an EMF and at most one bend. Nodes here are groups of ideal elements; those at the
 * ends of branches are numbered as `core`, the others lie inside one branch.
 */
export interface Chains {
  /** How many core nodes; ground is number 0. */
  readonly cores: number;
  /** The core nodes at the ends of each branch. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Elements of branch n: member[start[n]] … member[start[n+1]−1], from its a to its b. */
  readonly start: Int32Array;
  readonly member: Int32Array;
  /** Per element: its branch, or `ideal` or `dead`; and +1 or −1 as it lies along it or against. */
  readonly branch: Int32Array;
  readonly sense: Int8Array;
  /** The element of each branch that bends, or −1. */
  readonly bend: Int32Array;
  /** Per group: its core number, or −1 and then its branch and how many members lie before it. */
  readonly core: Int32Array;
  readonly inside: Int32Array;
  readonly place: Int32Array;
  /** Per group at a dead end: the element that leads back from it; −1 for all others. */
  readonly stem: Int32Array;
}

/** In place of its branch: an element without resistance. */
export const ideal = -1;
/** In place of its branch: an element on a dead end, where nothing can flow. */
export const dead = -2;

/** Collapses what lies in series. */
export function chainsOf(netlist: Netlist, groups: Ideal, isIdeal: (e: number) => boolean): Chains {
  const walk = new Walk(netlist, groups, isIdeal);
  walk.strip();
  walk.start(0);
  for (let group = 1; group < groups.count; group++) {
    if (walk.isLoose(group) && !walk.isInside(group)) walk.start(group);
  }
  walk.follow();
  // What is left are rings that meet nothing: any node of one serves as its end.
  for (let group = 1; group < groups.count; group++) {
    if (walk.isLoose(group)) walk.start(group);
    walk.follow();
  }
  return walk.chains();
}

class Walk {
  private readonly links: number[][];
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  private readonly branch: Int32Array;
  private readonly sense: Int8Array;
  private readonly core: Int32Array;
  private readonly inside: Int32Array;
  private readonly place: Int32Array;
  private readonly stem: Int32Array;
  private readonly queue: number[] = [];
  private head = 0;
  private readonly a: number[] = [];
  private readonly b: number[] = [];
  private readonly starts: number[] = [0];
  private readonly member: number[] = [];
  private readonly bend: number[] = [];

  constructor(
    private readonly netlist: Netlist,
    { group, count }: Ideal,
    isIdeal: (e: number) => boolean
  ) {
    this.from = netlist.a.map((node) => group[node] ?? 0);
    this.to = netlist.b.map((node) => group[node] ?? 0);
    this.branch = new Int32Array(netlist.a.length).fill(ideal);
    this.sense = new Int8Array(netlist.a.length);
    this.core = new Int32Array(count).fill(-1);
    this.inside = new Int32Array(count).fill(-1);
    this.place = new Int32Array(count);
    this.stem = new Int32Array(count).fill(-1);
    const links: number[][] = Array.from({ length: count }, () => []);
    netlist.elements.forEach((_, e) => {
      if (isIdeal(e)) return;
      links[this.from[e] ?? 0]?.push(e);
      links[this.to[e] ?? 0]?.push(e);
    });
    this.links = links;
  }

  /** Takes away dead ends, from their tips inwards, as far as no current is driven into them. */
  strip(): void {
    const tips = [...this.links.keys()].filter((group) => this.isTip(group));
    for (let tip = tips.pop(); tip !== undefined; tip = tips.pop()) {
      const e = this.links[tip]?.[0];
      if (e === undefined || !this.isTip(tip)) continue;
      const next = (this.from[e] === tip ? this.to[e] : this.from[e]) ?? 0;
      this.branch[e] = dead;
      this.stem[tip] = e;
      this.links[tip] = [];
      this.links[next] = (this.links[next] ?? []).filter((f) => f !== e);
      if (this.isTip(next)) tips.push(next);
    }
  }

  private isTip(group: number): boolean {
    const [e, ...more] = this.links[group] ?? [];
    return group !== 0 && e !== undefined && more.length === 0 && !this.netlist.drives(e);
  }

  /** Could a branch pass through this node: two different elements meet there and nothing else? */
  isInside(group: number): boolean {
    const [e = -1, f = -1, ...more] = this.links[group] ?? [];
    if (f < 0 || more.length > 0 || e === f) return false;
    const { netlist } = this;
    if (netlist.drives(e) || netlist.drives(f)) return false;
    return !(netlist.bends(e) && netlist.bends(f));
  }

  isLoose(group: number): boolean {
    return this.core[group] === -1 && this.inside[group] === -1 && this.stem[group] === -1;
  }

  start(group: number): void {
    this.core[group] = this.queue.length;
    this.queue.push(group);
  }

  follow(): void {
    for (; this.head < this.queue.length; this.head++) {
      const group = this.queue[this.head] ?? 0;
      for (const e of this.links[group] ?? []) {
        if (this.branch[e] === ideal) this.walk(group, e);
      }
    }
  }

  /** Follows one branch from a core node to the next. */
  private walk(group: number, first: number): void {
    const { netlist } = this;
    const name = this.a.length;
    let at = group;
    let e = first;
    let bend = -1;
    for (let place = 1; ; place++) {
      this.branch[e] = name;
      this.sense[e] = this.from[e] === at ? 1 : -1;
      this.member.push(e);
      if (netlist.bends(e)) bend = e;
      at = (this.from[e] === at ? this.to[e] : this.from[e]) ?? 0;
      if (this.core[at] !== -1) break;
      const next = (this.links[at]?.[0] === e ? this.links[at]?.[1] : this.links[at]?.[0]) ?? 0;
      if (bend >= 0 && netlist.bends(next)) {
        this.start(at);
        break;
      }
      this.inside[at] = name;
      this.place[at] = place;
      e = next;
    }
    this.a.push(this.core[group] ?? 0);
    this.b.push(this.core[at] ?? 0);
    this.starts.push(this.member.length);
    this.bend.push(bend);
  }

  chains(): Chains {
    return {
      cores: this.queue.length,
      a: Int32Array.from(this.a),
      b: Int32Array.from(this.b),
      start: Int32Array.from(this.starts),
      member: Int32Array.from(this.member),
      branch: this.branch,
      sense: this.sense,
      bend: Int32Array.from(this.bend),
      core: this.core,
      inside: this.inside,
      place: this.place,
      stem: this.stem
    };
  }
}
