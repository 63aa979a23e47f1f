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
  /** Contributions, S and A: the branches', to be filled in before, then those of pairs. */
  readonly cg: Float64Array;
  readonly cq: Float64Array;
  /** Positions to be worked out again: set to 1 for the owner of a changed branch. */
  readonly dirty: Uint8Array;
  /** Potential of each node against the reference of its island, V. */
  readonly volts: Float64Array;
  /** Largest of those, V: what their rounding is measured by. */
  highest = 0;
  /** Reference node of each node's island. */
  readonly island: Int32Array;
  private readonly g: Float64Array;
  private readonly q: Float64Array;
  /** 1 / sum of conductances at the node eliminated k-th, Ω; 0 where an island ends. */
  private readonly share: Float64Array;

  constructor(private readonly pattern: Pattern) {
    const { node, far, sense } = pattern;
    this.cg = new Float64Array(sense.length);
    this.cq = new Float64Array(sense.length);
    this.dirty = new Uint8Array(node.length).fill(1);
    this.volts = new Float64Array(node.length);
    this.island = new Int32Array(node.length);
    this.g = new Float64Array(far.length);
    this.q = new Float64Array(far.length);
    this.share = new Float64Array(node.length);
  }

  /** Eliminates from the dirty nodes on. Returns −1, or a node whose currents have no way back. */
  forward(): number {
    const { node, start, parent, feed, feedStart, pair, sense } = this.pattern;
    const { cg, cq, dirty, g, q, share } = this;
    let stuck = -1;
    for (let k = dirty.indexOf(1); k >= 0 && k < node.length; k++) {
      if (dirty[k] === 0) continue;
      dirty[k] = 0;
      const from = start[k]!;
      const to = start[k + 1]!;
      let total = 0;
      for (let s = from; s < to; s++) {
        let gs = 0;
        let qs = 0;
        for (let f = feedStart[s]!; f < feedStart[s + 1]!; f++) {
          const c = feed[f]!;
          gs += cg[c]!;
          qs += cq[c]!;
        }
        g[s] = gs;
        q[s] = qs;
        total += gs;
      }
      if (to - from > 1) dirty[parent[k]!] = 1;
      if (total === 0) {
        share[k] = 0;
        if (!this.passOn(k)) stuck = node[k]!;
        continue;
      }
      const inverse = 1 / total;
      share[k] = inverse;
      let p = pair[k]!;
      for (let i = from; i < to - 1; i++) {
        const gi = g[i]!;
        const qi = q[i]!;
        const wi = gi * inverse;
        for (let j = i + 1; j < to; j++, p++) {
          const wj = g[j]! * inverse;
          cg[p] = gi * wj;
          cq[p] = sense[p]! * (wi * q[j]! - wj * qi);
        }
      }
    }
    return stuck;
  }

  /** At the last node of an island: hands its currents from the first slot to the others. */
  private passOn(k: number): boolean {
    const { start, pair, sense } = this.pattern;
    const { cg, cq, q } = this;
    const from = start[k]!;
    const to = start[k + 1]!;
    let net = 0;
    let gross = 0;
    let p = pair[k]!;
    for (let i = from; i < to; i++) {
      net += q[i]!;
      gross += Math.abs(q[i]!);
      for (let j = i + 1; j < to; j++, p++) {
        cg[p] = 0;
        cq[p] = i === from ? sense[p]! * q[j]! : 0;
      }
    }
    return Math.abs(net) <= balanced * gross;
  }

  /** Potentials, back from the last node to the first; an island's reference is at 0 V. */
  back(): void {
    const { node, start, far } = this.pattern;
    const { g, q, share, volts, island } = this;
    let highest = 0;
    for (let k = node.length - 1; k >= 0; k--) {
      const at = node[k]!;
      let v = 0;
      let root = at;
      if (share[k] !== 0) {
        for (let s = start[k]!; s < start[k + 1]!; s++) {
          const gs = g[s]!;
          v += gs * volts[far[s]!]! - q[s]!;
          if (gs > 0) root = island[far[s]!]!;
        }
      }
      v *= share[k]!;
      if (Math.abs(v) > highest) highest = Math.abs(v);
      volts[at] = v;
      island[at] = root;
    }
    this.highest = highest;
  }
}
