import type { Stand } from './branches';
import { ideal } from './chains';
import { elementAmps } from './currents';
import { CircuitError } from './errors';
import { isBeyond, mostAmps } from './junction';
import { nameOf } from './kinds';
import type { Element } from './kinds';
import type { Netlist } from './netlist';
import { Network } from './network';

/** Steps after which the search for where everything bends is given up: far more than any needs. */
const mostSteps = 1000;
/** Rounds after which limits move one at a time, the first in order, which cannot go in a circle. */
const eagerRounds = 10;
/** Conductance lent to sources at their limit at first, S, and its share each time it misled. */
const firstLent = 1e-6;
const lessLent = 1e-2;
/**
 * Conductance that is kept where the limits themselves leave a voltage open, S: two equal limits in
 * series share it evenly then. Nothing leaks through it beyond this share of the limit.
 */
const leastLent = 1e-12;
const leastLeak = 1e-9;
/** More than this times its saturation current never flows backwards through a junction. */
const forced = 2;
/** Steps after which limits are looked at though a junction has not settled: one may hold it. */
const patience = 80;

/**
 * Steps until every junction and every limit agrees with the network around it.
 *
 * Junctions settle first, as the limits stand; then limits. Returns the network, which is another
 * one when an ideal source went into or out of its limit. Moving the first of the limits that are
 * wrong ends for certain, as every law rises.
 *
 * Errors: a `CircuitError` when a current has no way back, or when nothing fits.
 *
 * Source: least-index rule of K. G. Murty, Opsearch 11 (1974).
 */
export function iterate(first: Network, stand: Stand): Network {
  let network = first;
  let lend = firstLent;
  let rounds = 0;
  let stuckBefore = false;
  let waited = 0;
  if (stand.lent > 0) lendTo(network, stand, 0);
  for (let step = 0; step < mostSteps; step++) {
    const stuck = network.step();
    if (stuck >= 0) {
      if (stuckBefore || stand.mode.every((mode) => mode === 0)) noWayBack(network, stuck);
      stuckBefore = true;
      lendTo(network, stand, lend);
      continue;
    }
    const calm = settleJunctions(network);
    if (!calm && ++waited < patience) continue;
    const settled = settleLimits(network, rounds++ < eagerRounds);
    if (!settled) waited = 0;
    else if (!calm) continue;
    if (settled && stand.lent === 0 && joined(network)) return network;
    if (settled && lend <= leastLent && stand.lent > 0 && tight(network)) return network;
    const misled = stand.lent === 0 && rounds > 1;
    if (misled) lend *= lessLent;
    lendTo(network, stand, settled && !misled ? 0 : lend);
    if (!settled) network = rearranged(network, stand);
  }
  refuseForcedDiode(network);
  throw new CircuitError({
    code: 'converge',
    where: 'Circuit',
    met: `no solution within ${String(mostSteps)} steps`,
    allowed: 'No current may be forced through a source beyond its limit or a diode backwards.'
  });
}

function lendTo(network: Network, stand: Stand, lent: number): void {
  stand.lent = lent;
  network.limits.forEach((n) => network.change(n));
}

/** Is every source at its limit within one island, so that its voltage is decided? */
const joined = ({ limits, chains, elimination }: Network): boolean =>
  limits.every((n) => elimination.joins(chains.a[n] ?? 0, chains.b[n] ?? 0));

/** Does nothing to speak of flow through what was lent? */
const tight = (network: Network): boolean =>
  network.limits.every((n) => network.branches.leak(n, network.across(n)) <= leastLeak);

function settleJunctions(network: Network): boolean {
  const { junctions, branches } = network;
  let settled = true;
  for (let j = 0; j < junctions.length; j++) {
    const n = junctions[j] ?? 0;
    if (branches.settleJunction(n, network.across(n))) continue;
    settled = false;
    network.change(n);
  }
  return settled;
}

function settleLimits(network: Network, eager: boolean): boolean {
  const { limits, idealLimits, branches } = network;
  let settled = true;
  for (let l = 0; l < limits.length; l++) {
    const n = limits[l] ?? 0;
    if (branches.settleLimit(n, network.across(n))) continue;
    if (!eager) return false;
    settled = false;
  }
  if (idealLimits.length === 0) return settled;
  const amps = elementAmps(network);
  for (const e of idealLimits) {
    if (branches.settleMode(e, amps[e] ?? 0)) continue;
    if (!eager) return false;
    settled = false;
  }
  return settled;
}

/** The network anew when an ideal source went into or came out of its limit. */
function rearranged(network: Network, stand: Stand): Network {
  const { netlist, chains } = network;
  const same = chains.branch.every((n, e) => network.isIdeal(e) === (n === ideal));
  return same ? network : new Network(netlist, stand);
}

/** Throws when a diode is what could not settle: forced backwards, or held by nothing forwards. */
function refuseForcedDiode(network: Network): void {
  const { junctions, chains, netlist, stand, branches } = network;
  for (const n of junctions) {
    const e = chains.bend[n] ?? 0;
    const element = netlist.elements[e];
    const saturation = netlist.saturation[e] ?? 0;
    const law = (branches.g[n] ?? 0) * network.across(n) + (branches.q[n] ?? 0);
    const amps = (chains.sense[e] ?? 0) * law;
    if (element === undefined) continue;
    if (amps < -forced * saturation) {
      const met = `${(-amps).toPrecision(3)} A are driven through it from b to a`;
      refuse(element, met, 'It blocks that way: give the current another way.');
    }
    if (isBeyond(stand.point[e] ?? 0, saturation)) {
      const allowed = 'Something must hold its current: give ohms to it or to its source.';
      refuse(element, `more than ${String(mostAmps)} A through it`, allowed);
    }
  }
}

function refuse(element: Element, met: string, allowed: string): never {
  throw new CircuitError({ code: 'diode', where: nameOf(element), met, allowed, field: 'ohms' });
}

function noWayBack(network: Network, stuck: number): never {
  const { netlist } = network;
  throw new CircuitError({
    code: 'way-back',
    where: culpritOf(network, netlist, stuck),
    met: 'its current has no way back',
    allowed: 'A conducting path must lead from b to a: join them, or set amps to 0.',
    field: 'amps'
  });
}

/** The first current source between the island that is stuck and another. */
function culpritOf({ chains, elimination }: Network, netlist: Netlist, stuck: number): string {
  const { island } = elimination;
  const culprit = netlist.elements.find((_, e) => {
    if (!netlist.drives(e)) return false;
    const n = chains.branch[e] ?? 0;
    const [from, to] = [island[chains.a[n] ?? 0], island[chains.b[n] ?? 0]];
    return from !== to && (from === stuck || to === stuck);
  });
  return culprit === undefined ? 'Circuit' : nameOf(culprit);
}
