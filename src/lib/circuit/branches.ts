/* eslint-disable @typescript-eslint/no-non-null-assertion -- a kernel: every index is from its chains */
import type { Chains } from './chains';
import { ampsAt, firstPoint, nextPoint, stands, steepAt } from './junction';
import type { Netlist } from './netlist';

/** Where each element that bends stands, whatever branch it is in. */
export class Stand {
  /** Per element: the junction's point. */
  readonly point: Float64Array;
  /** Per element: −1 or 1 when its current from a to b is at that limit, else 0. */
  readonly mode: Int8Array;
  /** Conductance lent to sources at their limit while the search goes on, S. */
  lent = 0;

  constructor(netlist: Netlist) {
    this.point = netlist.saturation.map((saturation) =>
      saturation > 0 ? firstPoint(saturation) : 0
    );
    this.mode = new Int8Array(netlist.elements.length);
  }
}

/** The law of every branch: i = g·v + q, with v from its a to its b. */
export class Branches {
  readonly g: Float64Array;
  readonly q: Float64Array;
  /** Resistance and EMF of the whole branch, Ω and V: v = ohms·i + emf but for a junction. */
  readonly ohms: Float64Array;
  readonly emf: Float64Array;
  /** Voltage of each junction branch at its point, less its EMF, the way of the junction, V. */
  private readonly held: Float64Array;
  private readonly steep: Float64Array;
  /** Resistance and EMF of every member in its place, Ω and V; and the place of every element. */
  private readonly memberOhms: Float64Array;
  private readonly memberEmf: Float64Array;
  private readonly place: Int32Array;

  constructor(
    private readonly netlist: Netlist,
    private readonly chains: Chains,
    private readonly stand: Stand
  ) {
    const numbers = (): Float64Array => new Float64Array(chains.a.length);
    [this.g, this.q, this.ohms, this.emf] = [numbers(), numbers(), numbers(), numbers()];
    [this.held, this.steep] = [numbers(), numbers()];
    const { member } = chains;
    this.memberOhms = new Float64Array(member.length);
    this.memberEmf = new Float64Array(member.length);
    this.place = new Int32Array(netlist.elements.length).fill(-1);
    member.forEach((e, m) => (this.place[e] = m));
  }

  /** Takes an element's values to its place; `drop` is its EMF between the groups it joins, V. */
  take(e: number, drop: number): void {
    const m = this.place[e]!;
    if (m < 0) return;
    this.memberOhms[m] = this.netlist.ohms[e]!;
    this.memberEmf[m] = this.chains.sense[e]! * drop;
  }

  /** Works out the law of branch n from its elements. */
  refresh(n: number): void {
    const { netlist, memberOhms, memberEmf } = this;
    const { start, member, sense, bend } = this.chains;
    const first = start[n]!;
    const last = start[n + 1]!;
    let ohms = 0;
    let emf = 0;
    for (let m = first; m < last; m++) {
      ohms += memberOhms[m]!;
      emf += memberEmf[m]!;
    }
    this.ohms[n] = ohms;
    this.emf[n] = emf;
    const e = bend[n]!;
    if (ohms === Infinity) {
      this.g[n] = 0;
      this.q[n] = sense[member[first]!]! * netlist.amps[member[first]!]!;
    } else if (e < 0) {
      const g = 1 / ohms;
      this.g[n] = g;
      this.q[n] = -g * emf;
    } else if (netlist.saturation[e]! > 0) this.junctionLaw(n, e);
    else this.limitLaw(n, e);
  }

  private junctionLaw(n: number, e: number): void {
    const [scale, ohms] = [this.netlist.scale[e]!, this.ohms[n]!];
    const x = this.stand.point[e]!;
    const steep = steepAt(x, this.netlist.saturation[e]!);
    const amps = ampsAt(x, this.netlist.saturation[e]!);
    const g = steep / (ohms * steep + scale);
    const q = (scale * (amps - x * steep)) / (ohms * steep + scale);
    this.g[n] = g;
    this.q[n] = this.chains.sense[e]! * q - g * this.emf[n]!;
    this.held[n] = scale * x + ohms * amps;
    this.steep[n] = steep;
  }

  private limitLaw(n: number, e: number): void {
    const [ohms, emf] = [this.ohms[n]!, this.emf[n]!];
    const mode = this.stand.mode[e]! * this.chains.sense[e]!;
    if (mode === 0) {
      this.g[n] = 1 / ohms;
      this.q[n] = -emf / ohms;
      return;
    }
    const amps = mode * this.netlist.limit[e]!;
    this.g[n] = this.stand.lent;
    this.q[n] = amps - this.g[n]! * (emf + amps * ohms);
  }

  /** Moves the junction of branch n to where voltage v puts it; true when it may stand. */
  settleJunction(n: number, v: number): boolean {
    const ohms = this.ohms[n]!;
    if (ohms === Infinity) return true;
    const e = this.chains.bend[n]!;
    const scale = this.netlist.scale[e]!;
    const way = this.chains.sense[e]!;
    const across = way * (v - this.emf[n]!);
    if (Math.abs(across - this.held[n]!) <= stands * (scale + ohms * this.steep[n]!)) return true;
    const amps = way * (this.g[n]! * v + this.q[n]!);
    const saturation = this.netlist.saturation[e]!;
    this.stand.point[e] = nextPoint(across, amps, { saturation, scale, ohms });
    return false;
  }

  /** Moves the limit of branch n to where voltage v puts it; true when it stands. */
  settleLimit(n: number, v: number): boolean {
    const ohms = this.ohms[n]!;
    if (ohms === Infinity) return true;
    const e = this.chains.bend[n]!;
    const past = this.chains.sense[e]! * (v - this.emf[n]!);
    return this.settleMode(e, ohms === 0 ? past * Number.MAX_VALUE : past / ohms);
  }

  /** What flows through the conductance lent to a source at its limit, as a share of that limit. */
  leak(n: number, v: number): number {
    const e = this.chains.bend[n]!;
    if (this.stand.mode[e] === 0 || this.ohms[n] === Infinity) return 0;
    return Math.abs(Math.abs(this.g[n]! * v + this.q[n]!) / this.netlist.limit[e]! - 1);
  }

  /** Moves the limit of element e to where the current that it would carry without one puts it. */
  settleMode(e: number, amps: number): boolean {
    const limit = this.netlist.limit[e]!;
    const wanted = amps > limit ? 1 : amps < -limit ? -1 : 0;
    const mode = this.stand.mode[e]!;
    if (wanted === mode) return true;
    // One limit is never left straight for the other: a step that far is an overshoot.
    this.stand.mode[e] = mode === 0 ? wanted : 0;
    return false;
  }
}
