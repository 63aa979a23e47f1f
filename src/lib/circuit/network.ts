import { Branches, Stand } from './branches';
import { chainsOf, dead, ideal } from './chains';
import type { Chains } from './chains';
import { Elimination } from './eliminate';
import { idealOf, idealOffsets } from './ideal';
import type { Ideal } from './ideal';
import type { Netlist } from './netlist';
import { patternOf } from './pattern';
import type { Pattern } from './pattern';

/** A circuit's structure, worked out once, and its numbers, kept from one solve to the next. */
export class Network {
  readonly ideal: Ideal;
  readonly chains: Chains;
  readonly branches: Branches;
  readonly elimination: Elimination;
  /** Branches with a junction, branches with a limit, ideal sources with a limit. */
  readonly junctions: Int32Array;
  readonly limits: Int32Array;
  readonly idealLimits: Int32Array;
  /** Potential of each node against its group, V. */
  readonly offset: Float64Array;
  /** EMF of each element from a to b as seen between the groups that it joins, V. */
  readonly drop: Float64Array;
  private readonly pattern: Pattern;
  /** Branches whose law has to be worked out again, and whether each is listed. */
  private readonly changed: Int32Array;
  private readonly listed: Uint8Array;
  private changes = 0;

  constructor(
    readonly netlist: Netlist,
    readonly stand: Stand
  ) {
    const isIdeal = (e: number): boolean => this.isIdeal(e);
    this.ideal = idealOf(netlist, isIdeal);
    this.chains = chainsOf(netlist, this.ideal, isIdeal);
    const { cores: count, a, b, bend } = this.chains;
    this.pattern = patternOf({ count, a, b });
    this.elimination = new Elimination(this.pattern);
    this.offset = new Float64Array(netlist.nodes.size);
    this.drop = new Float64Array(netlist.elements.length);
    this.branches = new Branches(netlist, this.chains, stand);
    const junction = (e: number): boolean => (netlist.saturation[e] ?? 0) > 0;
    const names = Int32Array.from(bend.keys());
    this.junctions = names.filter((n) => junction(bend[n] ?? -1));
    this.limits = names.filter((n) => (bend[n] ?? -1) >= 0 && !junction(bend[n] ?? -1));
    const limited = (e: number): boolean => (netlist.limit[e] ?? Infinity) < Infinity;
    this.idealLimits = Int32Array.from(netlist.elements.keys()).filter(
      (e) => isIdeal(e) && limited(e)
    );
    this.changed = new Int32Array(a.length);
    this.listed = new Uint8Array(a.length);
    this.shift();
  }

  /** Has element e no resistance, and is it a voltage therefore? */
  isIdeal(e: number): boolean {
    const { ohms, saturation } = this.netlist;
    return ohms[e] === 0 && saturation[e] === 0 && this.stand.mode[e] === 0;
  }

  /** Notes that element e has new values. False when they ask for another structure. */
  touch(e: number): boolean {
    const n = this.chains.branch[e] ?? ideal;
    if (this.isIdeal(e) !== (n === ideal)) return false;
    if (n === ideal) {
      this.shift();
      return true;
    }
    if (n !== dead && this.netlist.bends(e) !== (this.chains.bend[n] === e)) return false;
    this.takeDrop(e);
    if (n !== dead) this.change(n);
    return true;
  }

  /** The EMF of an element less what ideal elements set between its ends. */
  private takeDrop(e: number): void {
    const { netlist, offset, drop } = this;
    const apart = (offset[netlist.a[e] ?? 0] ?? 0) - (offset[netlist.b[e] ?? 0] ?? 0);
    drop[e] = (netlist.emf[e] ?? 0) - apart;
    this.branches.take(e, drop[e] ?? 0);
  }

  /** Lists a branch to have its law worked out again. */
  change(n: number): void {
    if (this.listed[n] === 1) return;
    this.listed[n] = 1;
    this.changed[this.changes++] = n;
  }

  /** Takes the ideal elements' voltages anew, and so every branch. */
  shift(): void {
    idealOffsets(this.netlist, this.ideal, this.offset);
    for (let e = 0; e < this.drop.length; e++) this.takeDrop(e);
    for (let n = 0; n < this.listed.length; n++) this.change(n);
  }

  /** Solves the network as every bend now stands. Returns −1, or a core node without a way back. */
  step(): number {
    const { branches, elimination, changed, listed } = this;
    const { owner, sense } = this.pattern;
    const { branchG, branchQ, dirty } = elimination;
    for (let c = 0; c < this.changes; c++) {
      const n = changed[c] ?? 0;
      listed[n] = 0;
      branches.refresh(n);
      const at = owner[n] ?? -1;
      if (at < 0) continue;
      branchG[n] = branches.g[n] ?? 0;
      branchQ[n] = (sense[n] ?? 0) * (branches.q[n] ?? 0);
      dirty[at] = 1;
    }
    const many = this.changes * 4 > changed.length;
    this.changes = 0;
    const stuck = many ? elimination.forward() : elimination.forwardDirty();
    elimination.back();
    return stuck;
  }

  /** Voltage across branch n from its a to its b, V. */
  across(n: number): number {
    const { volts } = this.elimination;
    return (volts[this.chains.a[n] ?? 0] ?? 0) - (volts[this.chains.b[n] ?? 0] ?? 0);
  }
}
