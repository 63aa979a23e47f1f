import { balanceCurrents } from './currents';
import { backSubstitute, eliminate, workFor } from './eliminate';
import type { Work } from './eliminate';
import { CircuitError } from './errors';
import { idealOf, idealOffsets } from './ideal';
import type { Ideal } from './ideal';
import { ampsAt, firstPoint, interceptAt, nextPoint, slopeAt, voltsAt } from './junction';
import { nameOf } from './kinds';
import type { Model } from './kinds';
import type { Netlist } from './netlist';
import { patternOf } from './pattern';
import type { Pattern } from './pattern';

/** Volts that a junction's tangent may be off by where it is used: far under any meter. */
const voltsOff = 5e-14;
/** Relative error of a blocking junction's current. */
const ampsOff = 1e-13;
/** Conductance lent to a source at its limit while its circuit is not yet possible, S. */
const lent = 1e-6;
const mostSteps = 400;

/** A circuit's numbers, from the first guess to the solution. */
export class Network {
  /** Law of each element that is not ideal: i = g·v + q. */
  readonly g: Float64Array;
  readonly q: Float64Array;
  /** −1 or 1 where the current from a to b is at its limit. */
  readonly mode: Int8Array;
  readonly offset: Float64Array;
  ideal!: Ideal;
  work!: Work;
  private readonly point: Float64Array;
  private pattern!: Pattern;
  private lending = false;

  constructor(readonly netlist: Netlist) {
    const { models, nodes } = netlist;
    this.g = new Float64Array(models.length);
    this.q = new Float64Array(models.length);
    this.mode = new Int8Array(models.length);
    this.offset = new Float64Array(nodes.size);
    this.point = Float64Array.from(models, ({ junction }) => (junction ? firstPoint(junction) : 0));
    this.arrange();
  }

  /** Steps until every junction and every limit agrees with the network around it. */
  solve(): void {
    for (let step = 0; step < mostSteps; step++) {
      const stuck = this.step();
      if (stuck >= 0) this.noWayBack(stuck);
      if (!this.settleJunctions()) continue;
      const settled = this.settleLimits();
      if (settled && !this.lending) return;
      this.lending = !settled;
    }
    throw new CircuitError({
      code: 'converge',
      where: 'Circuit',
      met: `no solution within ${String(mostSteps)} steps`,
      allowed: 'Sources with a limit must not be forced beyond it: check limit and amps.'
    });
  }

  /** Voltage across an element, a against b, V. */
  across(e: number): number {
    return this.at(this.netlist.a[e] ?? 0) - this.at(this.netlist.b[e] ?? 0);
  }

  at(node: number): number {
    const group = this.ideal.group[node] ?? 0;
    return (this.work.volts[group] ?? 0) + (this.offset[node] ?? 0);
  }

  /** Current of every element from a to b, A, balanced at every node. */
  currents(): Float64Array {
    const amps = this.g.map((g, e) => g * this.across(e) + (this.q[e] ?? 0));
    return balanceCurrents(this.netlist, { g: this.g, amps, ideal: this.ideal });
  }

  private arrange(): void {
    const { netlist } = this;
    this.ideal = idealOf(netlist, (e) => this.isIdeal(e));
    const { group, count } = this.ideal;
    const a = netlist.a.map((node) => group[node] ?? 0);
    const b = netlist.b.map((node) => group[node] ?? 0);
    this.pattern = patternOf({ count, a, b });
    this.work = workFor(this.pattern);
  }

  private isIdeal(e: number): boolean {
    const model = this.netlist.models[e];
    return model?.ohms === 0 && model.junction === undefined && this.mode[e] === 0;
  }

  private step(): number {
    const { netlist, offset, g, q, pattern, work } = this;
    idealOffsets(netlist, this.ideal, offset);
    const edgeQ = new Float64Array(q.length);
    netlist.models.forEach((model, e) => {
      this.law(e, model);
      const apart = (offset[netlist.a[e] ?? 0] ?? 0) - (offset[netlist.b[e] ?? 0] ?? 0);
      edgeQ[e] = (g[e] ?? 0) * apart + (q[e] ?? 0);
    });
    const stuck = eliminate(pattern, work, g, edgeQ);
    if (stuck < 0) backSubstitute(pattern, work);
    return stuck;
  }

  private law(e: number, { ohms, emf = 0, amps = 0, limit = 0, junction }: Model): void {
    const mode = this.mode[e] ?? 0;
    const x = this.point[e] ?? 0;
    if (junction !== undefined) {
      this.g[e] = slopeAt(x, junction, ohms);
      this.q[e] = interceptAt(x, junction, ohms);
    } else if (mode !== 0) {
      this.g[e] = this.lending ? lent : 0;
      this.q[e] = mode * limit - (this.g[e] ?? 0) * (emf + mode * limit * ohms);
    } else {
      this.g[e] = this.isIdeal(e) ? 0 : 1 / ohms;
      this.q[e] = amps - (this.g[e] ?? 0) * emf;
    }
  }

  /** Moves every junction to where the network puts it; true when none had to move. */
  private settleJunctions(): boolean {
    let settled = true;
    this.netlist.models.forEach((model, e) => {
      if (model.junction !== undefined && !this.settleJunction(e, model)) settled = false;
    });
    return settled;
  }

  private settleJunction(e: number, model: Model): boolean {
    const { junction, ohms } = model;
    if (junction === undefined) return true;
    const v = this.across(e);
    const i = (this.g[e] ?? 0) * v + (this.q[e] ?? 0);
    const x = nextPoint(this.point[e] ?? 0, v, i, model);
    this.point[e] = x;
    const volts = Math.abs(voltsAt(x, junction, ohms) - v);
    const amps = Math.abs(ampsAt(x, junction) - i);
    const scale = Math.abs(i) + junction.saturation;
    return amps <= ampsOff * scale && volts <= voltsOff * Math.max(1, Math.abs(v));
  }

  private settleLimits(): boolean {
    let settled = true;
    let rearrange = false;
    let currents: Float64Array | undefined;
    this.netlist.models.forEach(({ ohms, emf = 0, limit }, e) => {
      if (limit === undefined) return;
      const past = this.across(e) - emf;
      let i = past / ohms;
      if (ohms === 0 && this.mode[e] === 0) i = (currents ??= this.currents())[e] ?? 0;
      else if (ohms === 0) i = past === 0 ? 0 : past * Infinity;
      const wanted = i > limit ? 1 : i < -limit ? -1 : 0;
      const mode = this.mode[e] ?? 0;
      if (wanted === mode) return;
      // One limit is never left straight for the other: a step that far is an overshoot.
      this.mode[e] = mode === 0 ? wanted : 0;
      settled = false;
      if (ohms === 0) rearrange = true;
    });
    if (rearrange) this.arrange();
    return settled;
  }

  private noWayBack(stuck: number): never {
    const { netlist, ideal, work } = this;
    backSubstitute(this.pattern, work);
    const island = (node: number): number => work.island[ideal.group[node] ?? 0] ?? 0;
    const culprit = netlist.elements.find((element, e) => {
      const [from, to] = [island(netlist.a[e] ?? 0), island(netlist.b[e] ?? 0)];
      return element.kind === 'current' && from !== to && (from === stuck || to === stuck);
    });
    throw new CircuitError({
      code: 'way-back',
      where: culprit === undefined ? 'Circuit' : nameOf(culprit),
      met: 'its current has no way back',
      allowed: 'A conducting path must lead from b to a: join them, or set amps to 0.',
      field: 'amps'
    });
  }
}
