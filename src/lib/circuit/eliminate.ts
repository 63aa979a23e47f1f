/* eslint-disable @typescript-eslint/no-non-null-assertion -- a kernel: every index comes from its pattern */
import type { Pattern } from './pattern';

/** Numbers of one elimination, kept between solves. */
export interface Work {
  /** Conductance and impressed current of each slot, S and A, along the slot. */
  readonly g: Float64Array;
  readonly q: Float64Array;
  /** Sum of conductances at the node eliminated k-th, S; 0 where an island ends. */
  readonly sum: Float64Array;
  /** Per node: potential against its island's reference, V, and that reference node. */
  readonly volts: Float64Array;
  readonly island: Int32Array;
}

export function workFor({ node, far }: Pattern): Work {
  return {
    g: new Float64Array(far.length),
    q: new Float64Array(far.length),
    sum: new Float64Array(node.length),
    volts: new Float64Array(node.length),
    island: new Int32Array(node.length)
  };
}

/** Share of the current at an island's last node below which what is left over is rounding. */
const balanced = 1e-9;

/**
 * Star-mesh elimination of every node: each slot carries i = g·v + q.
 *
 * Conductances are only added, multiplied and divided, never subtracted, so no spread of
 * resistances spoils them and an open switch is an exact 0. Impressed currents stay between two
 * nodes as they are carried on, so that what circulates in an island leaves no error outside it.
 * `edgeG` and `edgeQ` are the edges' conductance, S, and impressed current, A.
 *
 * Returns −1, or a node whose impressed currents have no way back.
 *
 * Source: star-mesh transform (Rosen 1924); subtraction-free elimination as in Grassmann, Taksar
 * and Heyman, Operations Research 33 (1985).
 */
export function eliminate(
  pattern: Pattern,
  work: Work,
  edgeG: Float64Array,
  edgeQ: Float64Array
): number {
  gather(pattern, work, edgeG, edgeQ);
  const { node, start, pair, target, sense } = pattern;
  const { g, q, sum } = work;
  let stuck = -1;
  for (let k = 0; k < node.length; k++) {
    const from = start[k]!;
    const to = start[k + 1]!;
    let total = 0;
    for (let s = from; s < to; s++) total += g[s]!;
    sum[k] = total;
    if (total === 0) {
      if (!passOn(pattern, work, k)) stuck = node[k]!;
      continue;
    }
    let p = pair[k]!;
    for (let i = from; i < to; i++) {
      const gi = g[i]!;
      const qi = q[i]!;
      const wi = gi / total;
      for (let j = i + 1; j < to; j++, p++) {
        const t = target[p]!;
        const wj = g[j]! / total;
        g[t]! += gi * wj;
        q[t]! += sense[p]! * (wi * q[j]! - wj * qi);
      }
    }
  }
  return stuck;
}

function gather(
  { slot, slotSense }: Pattern,
  { g, q }: Work,
  edgeG: Float64Array,
  edgeQ: Float64Array
): void {
  g.fill(0);
  q.fill(0);
  for (let e = 0; e < slot.length; e++) {
    const s = slot[e]!;
    if (s < 0) continue;
    g[s]! += edgeG[e]!;
    q[s]! += slotSense[e]! * edgeQ[e]!;
  }
}

/** At the last node of an island: hands its currents from the first slot to the others. */
function passOn({ start, pair, target, sense }: Pattern, { q }: Work, k: number): boolean {
  const from = start[k]!;
  let net = 0;
  let gross = 0;
  for (let s = from; s < start[k + 1]!; s++) {
    net += q[s]!;
    gross += Math.abs(q[s]!);
    if (s === from) continue;
    const p = pair[k]! + s - from - 1;
    q[target[p]!]! += sense[p]! * q[s]!;
  }
  return Math.abs(net) <= balanced * gross;
}

/** Potentials, back from the last node to the first; an island's reference is at 0 V. */
export function backSubstitute({ node, start, far }: Pattern, work: Work): void {
  const { g, q, sum, volts, island } = work;
  for (let k = node.length - 1; k >= 0; k--) {
    const at = node[k]!;
    const total = sum[k]!;
    volts[at] = 0;
    island[at] = at;
    if (total === 0) continue;
    let v = 0;
    for (let s = start[k]!; s < start[k + 1]!; s++) {
      v += (g[s]! * volts[far[s]!]! - q[s]!) / total;
      if (g[s]! > 0) island[at] = island[far[s]!]!;
    }
    volts[at] = v;
  }
}
