import type { Element } from '../circuit';
import {
  circuitOf,
  feedOf,
  instrumentBetween,
  lampRoads,
  locoNamed,
  startingVolts,
  type Fault,
  type Instrument,
  type Yard
} from '../yard';
import { Clumps } from './clumps';
import { Kernels, type Kernel, type Place } from './kernel';
import type { Moment, Pair } from './moment';
import { Net } from './net';
import { handsOf, type Change, type Hands, type Patch, type Patches } from './patch';
import { Places } from './places';
import type { Islands, Powered } from './powered';
import { known, type Range } from './range';

/** The loco with which roads are tried. */
const LOCO = locoNamed('Plover');

/** What a yard shows in a moment, whatever is wrong with it. */
export interface Settled {
  /** Whether the controller gives all it can with nothing more on the rails. */
  readonly limiting: () => boolean;
  /** Volts across a loco that is held still on a road. */
  readonly locoVolts: (road: string) => number;
  /** Roads on which a loco would run though they should be dead. */
  readonly live: readonly string[];
  /** Volts that an instrument held at two points has across it, whatever their sign. */
  readonly held: (kind: Exclude<Instrument, 'ohmmeter'>, pair: Pair) => Range;
  /** Volts between two points with nothing held there; 0 where they share no island. */
  readonly between: (pair: Pair) => number;
  /** Ohms between two points, with the supply unplugged; Infinity is open. */
  readonly ohms: (pair: Pair) => Range;
  /** Amps of a road's panel lamp. */
  readonly lampAmps: (road: string) => number;
}

const motor = (a: string, b: string): Element => ({
  kind: 'motor',
  id: 'stand-in',
  a,
  b,
  ohms: LOCO.ohms,
  emf: 0
});

const rails = (road: string): Pair => [`feed rail ${road}`, `return rail ${road}`];

/** What islands show at these places of theirs. */
function settledOf(
  islands: readonly Powered[],
  places: ReadonlyMap<string, Place>,
  live: readonly string[]
): Settled {
  const at = (pair: Pair) => pair.map((id) => places.get(id)) as [Place, Place];
  /** What an island says where both points lie in it; `apart` where they share none. */
  const asked = <T>(pair: Pair, apart: T, ask: (island: Powered, ends: Pair) => T): T => {
    const [from, to] = at(pair);
    const island = islands[from.island];
    return island && from.island === to.island ? ask(island, [from.name, to.name]) : apart;
  };
  return {
    limiting: () => islands.some(({ limiting }) => limiting),
    live,
    locoVolts: (road) => asked(rails(road), 0, (island, ends) => island.loaded(motor(...ends))),
    held: (kind, pair) =>
      asked(pair, known(0), (island, ends) => island.held(instrumentBetween(kind, ...ends))),
    between: (pair) => asked(pair, 0, (island, ends) => island.between(...ends)),
    ohms: (pair) => asked(pair, known(Infinity), (island, ends) => island.ohms(...ends)),
    lampAmps: (road) => islands.reduce((sum, island) => sum + (island.amps(`lamp ${road}`) ?? 0), 0)
  };
}

/** A road's rails and its feed terminal, by number. */
interface Reach {
  readonly road: string;
  readonly out: number;
  readonly feed: number;
  readonly back: number;
}

const keyOf = ({ islands }: Kernel): string => islands.map(({ key }) => key).join(';');

/** What all moments of a yard share. */
export interface Shared {
  readonly patches: Patches;
  readonly islands: Islands;
}

/** What a moment shows of a yard with some faults or none: one object for all that show the same. */
export class Settling {
  private readonly known = new Map<string, Settled>();
  private readonly hands: Hands;
  private readonly net: Net;
  private readonly kernels: Kernels;
  private readonly places: Places;
  private readonly others: readonly Reach[];
  private readonly home: number;
  /** Elements of the sound yard that matter here. */
  private readonly core: Uint8Array;
  /** Of each node far from every source and from where somebody looks, what stands for those joined to it; −1 for others. */
  private readonly dead: Int32Array;
  private readonly looked: readonly number[];
  /** What the sound yard shows, and the key of it without the roads that are live. */
  private readonly plain: Settled;
  private readonly plainKey: string;
  /** Whether no conductors lead to any road that should be dead. */
  private readonly isCutOff: boolean;

  constructor(
    yard: Yard,
    private readonly moment: Moment,
    private readonly shared: Shared
  ) {
    this.hands = handsOf(yard, moment.scene);
    const { runs } = this.hands;
    this.net = new Net(circuitOf(yard, moment.scene, runs).elements, shared.patches.named);
    this.kernels = new Kernels(this.net);
    this.places = new Places(runs, moment.pairs);
    this.home = this.net.node('return');
    this.others = moment.others.map((road) => {
      const [feed, back] = rails(road).map((name) => this.net.node(name)) as [number, number];
      return { road, out: this.net.node(feedOf(yard, road)), feed, back };
    });
    this.looked = this.nodesOf(this.places.nodes([]));
    this.dead = this.net.dead(this.looked);
    this.core = this.kernels.left(this.looked);
    this.isCutOff = this.reached().length === 0;
    const live = this.live();
    const kernel = this.kernels.of(this.looked);
    this.plainKey = keyOf(kernel);
    this.plain = this.once([this.plainKey, ...live], () => this.found(kernel, live));
  }

  private nodesOf(points: readonly string[]): readonly number[] {
    const all = ['return', ...points, ...this.moment.roads.flatMap(rails)];
    return all.map((name) => this.net.node(name));
  }

  private once(keys: readonly string[], work: () => Settled): Settled {
    const key = keys.join(';');
    const settled = this.known.get(key) ?? work();
    this.known.set(key, settled);
    return settled;
  }

  private settle({ runs, moves }: Patch, live: readonly string[]): Settled {
    const looked = moves ? this.nodesOf(this.places.nodes(runs)) : this.looked;
    const kernel = this.kernels.of(looked);
    const seen = moves ? kernel.seen.map(({ island, name }) => `${island}.${name}`) : [];
    return this.once([keyOf(kernel), ...seen, ...live], () => this.found(kernel, live));
  }

  private found({ islands, seen }: Kernel, live: readonly string[]): Settled {
    const ids = ['return', ...this.places.ids, ...this.moment.roads.flatMap(rails)];
    const places = new Map(ids.map((id, index) => [id, seen[index] as Place]));
    return settledOf(
      islands.map((each) => this.shared.islands.of(each)),
      places,
      live
    );
  }

  /** Roads that should be dead to whose rails conductors lead from both sides. */
  private reached(): readonly Reach[] {
    if (this.others.length === 0) return [];
    const joins = this.net.conductors();
    const is = (a: number, b: number) => joins.find(a) === joins.find(b);
    return this.others.filter(
      ({ out, feed, back }) =>
        (is(out, feed) && is(this.home, back)) || (is(out, back) && is(this.home, feed))
    );
  }

  /** Those of them whose loco would run. */
  private live(): readonly string[] {
    return this.reached().flatMap(({ road, feed, back }) => {
      const volts = this.voltsAt(feed, back);
      return Math.abs(volts) >= startingVolts(LOCO) ? [road] : [];
    });
  }

  /** Volts across a loco between two of these nodes. */
  private voltsAt(feed: number, back: number): number {
    const { islands, seen } = this.kernels.of([feed, back]);
    const [from, to] = seen as readonly [Place, Place];
    const island = islands[from.island];
    if (!island || from.island !== to.island) return 0;
    return this.shared.islands.of(island).loaded(motor(from.name, to.name));
  }

  /** Whether a change joins and parts only what is far from every source and from where somebody looks. */
  private isAside({ ends }: Change): boolean {
    return ends.every((node) => (this.dead[node] ?? -1) >= 0);
  }

  /** Whether all that these changes join dangles at one end. */
  private dangle(changes: readonly Change[]): boolean {
    if (changes.every(({ stays }) => stays)) return true;
    const clumps = new Clumps((node) => this.dead[node] ?? -1);
    return changes.every(({ stays, ends: [a = 0, b = 0] }) => stays || clumps.join(a, b));
  }

  /** What the moment shows with these faults; the same object for faults that show the same. */
  of(faults: readonly Fault[]): Settled {
    const patch = this.shared.patches.of(faults, this.hands);
    const { changes } = patch;
    if (changes.every((change) => this.isAside(change))) return this.plain;
    const isLiveAsBefore =
      this.isCutOff && changes.every((each) => each.stays || this.isAside(each));
    const isKernelAsBefore =
      changes.every(({ element }) => this.core[element] !== 1) && this.dangle(changes);
    if (isLiveAsBefore && isKernelAsBefore) return this.plain;
    return this.net.changed(changes, () => {
      const live = isLiveAsBefore ? [] : this.live();
      return isKernelAsBefore
        ? this.once([this.plainKey, ...live], () => ({ ...this.plain, live }))
        : this.settle(patch, live);
    });
  }
}

/** Whether a road has a panel lamp to look at. */
export const hasLamp = (yard: Yard, road: string): boolean => lampRoads(yard).includes(road);
