/* eslint-disable @typescript-eslint/no-non-null-assertion -- a kernel: every index is from its pattern */
import type { Pattern } from './pattern';

/** Share of the current at an island's last node below which what is left over is rounding. */
const balanced = 1e-9;

/**
 * Star-mesh elimination of every node of a pattern; each slot carries i = g·v + q.
 *
 * Conductances are only added, multiplied and divided, never subtracted, so no spread of
 * resistances spoils them and an open switch is an exact 0. Impressed currents stay between two
 * nodes as they are carried on, so that what circulates in an island leaves no error outside it.
 *
 * Source: star-mesh transform (Rosen 1924); subtraction-free elimination as in Grassmann, Taksar
 * and Heyman, Operations Research 33 (1985).
 */
export class Elimination {
  /** What each branch adds to its slot, S and A: to be filled in before. */
  readonly branchG: Float64Array;
  readonly branchQ: Float64Array;
  /** Positions to be worked out again: set to 1 for the owner of a changed branch. */
  readonly dirty: Uint8Array;
  /** Potential of each node against the reference of its island, V. */
  readonly volts: Float64Array;
  /** Largest of those, V: what their rounding is measured by. */
  highest = 0;
  /** Reference node of each node's island, and whether those stand for these numbers. */
  private readonly reference: Int32Array;
  private parted = false;
  /** When each node's turn comes. */
  private readonly position: Int32Array;
  private readonly g: Float64Array;
  private readonly q: Float64Array;
  /** Share of each slot in its node's conductance; at an island's last node 1 for one of them. */
  private readonly w: Float64Array;
  /** What impressed currents alone give the node eliminated k-th, V. */
  private readonly rise: Float64Array;
  /** 1 where an island ends, 2 where it ends with a current left over. */
  private readonly ends: Uint8Array;

  constructor(private readonly pattern: Pattern) {
    const { node, far, slot } = pattern;
    this.branchG = new Float64Array(slot.length);
    this.branchQ = new Float64Array(slot.length);
    this.dirty = new Uint8Array(node.length).fill(1);
    this.volts = new Float64Array(node.length);
    this.reference = new Int32Array(node.length);
    this.position = new Int32Array(node.length);
    node.forEach((at, k) => (this.position[at] = k));
    this.g = new Float64Array(far.length);
    this.q = new Float64Array(far.length);
    this.w = new Float64Array(far.length);
    this.rise = new Float64Array(node.length);
    this.ends = new Uint8Array(node.length);
  }

  /** Eliminates every node. Returns −1, or a node whose currents have no way back. */
  forward(): number {
    const { node, start, pair, target } = this.pattern;
    const { g, q, w, rise, ends } = this;
    this.pour();
    for (let k = 0; k < node.length; k++) {
      const from = start[k]!;
      const to = start[k + 1]!;
      let total = 0;
      let impressed = 0;
      let driven = 0;
      for (let s = from; s < to; s++) {
        total += g[s]!;
        impressed += q[s]!;
        driven += Math.abs(q[s]!);
      }
      if (total === 0) this.end(k);
      else {
        const inverse = 1 / total;
        ends[k] = 0;
        rise[k] = -impressed * inverse;
        for (let s = from; s < to; s++) w[s] = g[s]! * inverse;
      }
      let p = pair[k]!;
      for (let i = from; i < to - 1; i++) {
        const wi = w[i]!;
        const qi = q[i]!;
        if (wi === 0 && qi === 0) {
          p += to - i - 1;
          continue;
        }
        // Where nothing drives the node its pairs add 0 to every q; to the same bits without.
        if (driven === 0) for (let j = i + 1; j < to; j++, p++) g[target[p]!]! += wi * g[j]!;
        else {
          for (let j = i + 1; j < to; j++, p++) {
            const t = target[p]!;
            g[t]! += wi * g[j]!;
            q[t]! += wi * q[j]! - w[j]! * qi;
          }
        }
      }
    }
    return this.stuck();
  }

  /** Fills every slot with what the branches add to it. */
  private pour(): void {
    const { slot } = this.pattern;
    const { branchG, branchQ, g, q } = this;
    g.fill(0);
    q.fill(0);
    this.dirty.fill(0);
    for (let n = 0; n < slot.length; n++) {
      const s = slot[n]!;
      if (s < 0) continue;
      g[s]! += branchG[n]!;
      q[s]! += branchQ[n]!;
    }
  }

  /** Eliminates the dirty nodes and those that follow from them; to the same bits as `forward`. */
  forwardDirty(): number {
    const { node, start, turn, one, two, branches, pairs } = this.pattern;
    const { branchG, branchQ, dirty, g, q, w } = this;
    for (let k = dirty.indexOf(1); k >= 0 && k < node.length; k++) {
      if (dirty[k] === 0) continue;
      dirty[k] = 0;
      const from = start[k]!;
      const to = start[k + 1]!;
      let same = true;
      for (let s = from; s < to; s++) {
        let gs = 0;
        let qs = 0;
        for (let f = branches.start[s]!; f < branches.start[s + 1]!; f++) {
          gs += branchG[branches.item[f]!]!;
          qs += branchQ[branches.item[f]!]!;
        }
        for (let f = pairs.start[s]!; f < pairs.start[s + 1]!; f++) {
          const i = one[pairs.item[f]!]!;
          const j = two[pairs.item[f]!]!;
          gs += w[i]! * g[j]!;
          qs += w[i]! * q[j]! - w[j]! * q[i]!;
        }
        if (gs === g[s] && qs === q[s]) continue;
        same = false;
        g[s] = gs;
        q[s] = qs;
      }
      if (same) continue;
      // Each far node but the last owns slots that this node's pairs feed.
      for (let s = from; s < to - 1; s++) dirty[turn[s]!] = 1;
      this.weigh(k);
    }
    return this.stuck();
  }

  /** A node whose currents have no way back, −1 for none. */
  private stuck(): number {
    const k = this.ends.indexOf(2);
    return k < 0 ? -1 : this.pattern.node[k]!;
  }

  /** Shares of the k-th node's slots. */
  private weigh(k: number): void {
    const { start } = this.pattern;
    const { g, q, w } = this;
    const from = start[k]!;
    const to = start[k + 1]!;
    let total = 0;
    let impressed = 0;
    for (let s = from; s < to; s++) {
      total += g[s]!;
      impressed += q[s]!;
    }
    if (total === 0) {
      this.end(k);
      return;
    }
    const inverse = 1 / total;
    this.ends[k] = 0;
    this.rise[k] = -impressed * inverse;
    for (let s = from; s < to; s++) w[s] = g[s]! * inverse;
  }

  /** At the last node of an island: hands its currents from one slot to the others. */
  private end(k: number): void {
    const { start } = this.pattern;
    const { q, w } = this;
    this.rise[k] = 0;
    let net = 0;
    let gross = 0;
    for (let s = start[k]!; s < start[k + 1]!; s++) {
      w[s] = gross === 0 && q[s] !== 0 ? 1 : 0;
      net += q[s]!;
      gross += Math.abs(q[s]!);
    }
    this.ends[k] = Math.abs(net) <= balanced * gross ? 1 : 2;
  }

  /** Potentials, back from the last node to the first; an island's reference is at 0 V. */
  back(): void {
    const { node, start, far } = this.pattern;
    const { w, rise, ends, volts } = this;
    let highest = 0;
    for (let k = node.length - 1; k >= 0; k--) {
      let v = rise[k]!;
      if (ends[k] === 0) {
        const to = start[k + 1]!;
        for (let s = start[k]!; s < to; s++) v += w[s]! * volts[far[s]!]!;
      }
      const size = Math.abs(v);
      if (size > highest) highest = size;
      volts[node[k]!] = v;
    }
    this.highest = highest;
    this.parted = false;
  }

  /** Reference node of each node's island, worked out when first asked for. */
  get island(): Int32Array {
    if (!this.parted) this.part();
    return this.reference;
  }

  /** A node is in the island of any node that it gives a share to. */
  private part(): void {
    const { node } = this.pattern;
    const { reference } = this;
    for (let k = node.length - 1; k >= 0; k--) {
      const up = this.above(k);
      reference[node[k]!] = up === k ? node[k]! : reference[node[up]!]!;
    }
    this.parted = true;
  }

  /** Position of a node in the island of the k-th and nearer its end; k at that end. */
  private above(k: number): number {
    const { start, turn } = this.pattern;
    const from = start[k]!;
    let s = this.ends[k] === 0 ? start[k + 1]! - 1 : -1;
    while (s >= from && this.w[s] === 0) s--;
    return s >= from ? turn[s]! : k;
  }

  /** Do two nodes lie in one island? */
  joins(a: number, b: number): boolean {
    return this.endOf(a) === this.endOf(b);
  }

  private endOf(at: number): number {
    let k = this.position[at]!;
    for (let up = this.above(k); up !== k; up = this.above(k)) k = up;
    return k;
  }
}
