import type { Element, Sets } from '../circuit';
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
import type { Concerns } from './concerns';
import { Kernels, type Place } from './kernel';
import type { Moment, Pair } from './moment';
import { Net } from './net';
import { handsOf, none, type Change, type Hands, type Patch, type Patches } from './patch';
import { Places } from './places';
import type { Islands, Powered } from './powered';
import { known, type Range } from './range';

/** The loco with which roads are tried. */
const LOCO = locoNamed('Plover');

const motor = (a: string, b: string): Element => ({
  kind: 'motor',
  id: 'stand-in',
  a,
  b,
  ohms: LOCO.ohms,
  emf: 0
});

const rails = (road: string): Pair => [`feed rail ${road}`, `return rail ${road}`];

/** What of a circuit somebody sees. */
interface Sight {
  readonly islands: readonly Powered[];
  /** Where each node lies at which somebody looks, and the number of each point among them. */
  readonly seen: readonly Place[];
  readonly at: ReadonlyMap<string, number>;
}

/** What a yard shows in a moment, whatever is wrong with it. */
export class Settled {
  constructor(
    private readonly sight: Sight,
    /** Roads on which a loco would run though they should be dead, where that was asked. */
    readonly live: readonly string[] = []
  ) {}

  /** The sound yard but for the roads that are live. */
  with(live: readonly string[]): Settled {
    return new Settled(this.sight, live);
  }

  /** What an island says where both points lie in it; `apart` where they share none. */
  private asked<T>(pair: Pair, apart: T, ask: (island: Powered, ends: Pair) => T): T {
    const { islands, seen, at } = this.sight;
    const [from, to] = pair.map((id) => seen[at.get(id) ?? 0]) as [Place, Place];
    const island = islands[from.island];
    return island && from.island === to.island ? ask(island, [from.name, to.name]) : apart;
  }

  /** Whether the controller gives all it can with nothing more on the rails. */
  limiting(): boolean {
    return this.sight.islands.some(({ limiting }) => limiting);
  }

  /** Volts across a loco that is held still on a road. */
  locoVolts(road: string): number {
    return this.asked(rails(road), 0, (island, ends) => island.loaded(motor(...ends)));
  }

  /** Volts that an instrument held at two points has across it, whatever their sign. */
  held(kind: Exclude<Instrument, 'ohmmeter'>, pair: Pair): Range {
    const ask = (island: Powered, ends: Pair) => island.held(instrumentBetween(kind, ...ends));
    return this.asked(pair, known(0), ask);
  }

  /** Volts between two points with nothing held there; 0 where they share no island. */
  between(pair: Pair): number {
    return this.asked(pair, 0, (island, ends) => island.between(...ends));
  }

  /** Ohms between two points, with the supply unplugged; Infinity is open. */
  ohms(pair: Pair): Range {
    return this.asked(pair, known(Infinity), (island, ends) => island.ohms(...ends));
  }

  /** Amps of a road's panel lamp. */
  lampAmps(road: string): number {
    return this.sight.islands.reduce((sum, island) => sum + (island.amps(`lamp ${road}`) ?? 0), 0);
  }
}

/** A road's rails and its feed terminal, by number. */
interface Reach {
  readonly road: string;
  readonly out: number;
  readonly feed: number;
  readonly back: number;
}

/** What all moments of a yard share. */
export interface Shared {
  readonly patches: Patches;
  readonly islands: Islands;
  readonly concerns: Concerns;
}

/** What a moment shows of a yard with some faults or none: one object for all that show the same. */
export class Settling {
  /** What is shown, by the kernel, by what changes do to the sound kernel, or by the roads that are live. */
  private readonly known = new Map<string, Settled>();
  private readonly hands: Hands;
  private readonly net: Net;
  private readonly kernels: Kernels;
  private readonly places: Places;
  private readonly others: readonly Reach[];
  private readonly home: number;
  /** 1 for each node of the sound yard that something joins to a source, or to where somebody looks. */
  private readonly alive: Uint8Array;
  private readonly looked: readonly number[];
  /** Number of each point among the nodes looked at. */
  private readonly at: ReadonlyMap<string, number>;
  /** What the sound yard shows, but for the roads that are live. */
  readonly plain: Settled;
  /** Whether no conductors lead to any road that should be dead. */
  readonly isCutOff: boolean;
  private odd: Uint8Array | undefined;

  constructor(
    yard: Yard,
    private readonly moment: Moment,
    private readonly shared: Shared
  ) {
    this.hands = handsOf(yard, moment.scene);
    const { runs } = this.hands;
    this.net = new Net(circuitOf(yard, moment.scene, runs).elements, shared.patches.named);
    this.places = new Places(runs, moment.pairs);
    this.home = this.net.node('return');
    this.others = moment.others.map((road) => {
      const [feed, back] = rails(road).map((name) => this.net.node(name)) as [number, number];
      return { road, out: this.net.node(feedOf(yard, road)), feed, back };
    });
    const points = ['return', ...this.places.ids, ...moment.roads.flatMap(rails)];
    this.at = new Map(points.map((id, index) => [id, index]));
    this.looked = this.nodesOf(this.places.nodes([]));
    this.alive = this.net.alive(this.looked);
    this.kernels = new Kernels(this.net, this.looked);
    this.isCutOff = this.reached(this.net.conductors()).length === 0;
    this.plain = this.settle(none);
  }

  private nodesOf(points: readonly string[]): readonly number[] {
    const all = ['return', ...points, ...this.moment.roads.flatMap(rails)];
    return all.map((name) => this.net.node(name));
  }

  private once(key: string, work: () => Settled): Settled {
    const settled = this.known.get(key) ?? work();
    this.known.set(key, settled);
    return settled;
  }

  private settle({ changes, moved }: Patch): Settled {
    const looked = moved.length > 0 ? this.nodesOf(this.places.nodes(moved)) : this.looked;
    const { islands, seen } = this.kernels.of(looked, changes);
    const powered = islands.map((each) => this.shared.islands.of(each));
    const places = moved.length > 0 ? seen.map(({ island, name }) => `${island}.${name}`) : [];
    const key = `${powered.map(({ number }) => number).join()} ${places.join()}`;
    return this.once(key, () => new Settled({ islands: powered, seen, at: this.at }));
  }

  /** Roads that should be dead to whose rails conductors lead from both sides. */
  private reached(joins: Sets): readonly Reach[] {
    const is = (a: number, b: number) => joins.find(a) === joins.find(b);
    return this.others.filter(
      ({ out, feed, back }) =>
        (is(out, feed) && is(this.home, back)) || (is(out, back) && is(this.home, feed))
    );
  }

  /** Those of them whose loco would run. */
  private live({ changes }: Patch): readonly string[] {
    return this.reached(this.net.conductors()).flatMap(({ road, feed, back }) => {
      const volts = this.voltsAt(feed, back, changes);
      return Math.abs(volts) >= startingVolts(LOCO) ? [road] : [];
    });
  }

  /** Volts across a loco between two of these nodes. */
  private voltsAt(feed: number, back: number, changes: readonly Change[]): number {
    const { islands, seen } = this.kernels.of([feed, back], changes);
    const [from, to] = seen as readonly [Place, Place];
    const island = islands[from.island];
    if (!island || from.island !== to.island) return 0;
    return this.shared.islands.of(island).loaded(motor(from.name, to.name));
  }

  /** Whether a change joins and parts only what is far from every source and from where somebody looks. */
  private isAside({ ends }: Change): boolean {
    return ends.every((node) => this.alive[node] !== 1);
  }

  /** Whether a suspect, by its number, may show something else than the sound yard; where that is cut off, roads that are live too. */
  concerns(suspect: number): boolean {
    this.odd ??= this.shared.concerns.in({
      awake: this.hands.awake.keys(),
      core: this.kernels.mattering,
      alive: this.alive
    });
    return this.odd[suspect] === 1;
  }

  /** The changes that join something to what a source reaches, or to where somebody looks. */
  private joining(changes: readonly Change[]): readonly Change[] {
    return changes.filter((each) => !each.stays && !this.isAside(each));
  }

  /** Whether all that changes join dangles at one end: a contact that was open joins something far from every source, and nothing else is joined. */
  private dangles(changes: readonly Change[]): boolean {
    const [one, ...more] = this.joining(changes);
    if (!one) return true;
    const wasOpen = one.ends.length === 2;
    return more.length === 0 && wasOpen && one.ends.some((node) => this.alive[node] !== 1);
  }

  /** What the moment shows with these faults, but for the roads that are live; the same object for faults that show the same. */
  of(faults: readonly Fault[]): Settled {
    const patch = this.shared.patches.of(faults, this.hands);
    const { changes } = patch;
    if (changes.every((change) => this.isAside(change))) return this.plain;
    const effect = this.dangles(changes) ? this.kernels.effect(changes) : undefined;
    if (effect === '') return this.plain;
    const settle = () => this.net.changed(changes, () => this.settle(patch));
    return effect === undefined || patch.moved.length > 0 ? settle() : this.once(effect, settle);
  }

  /** Which roads are live with these faults; the same object for the same roads. */
  liveWith(faults: readonly Fault[]): Settled {
    const patch = this.shared.patches.of(faults, this.hands);
    const { changes } = patch;
    if (this.isCutOff && this.joining(changes).length === 0) return this.plain;
    const live = this.net.changed(changes, () => this.live(patch));
    return live.length === 0 ? this.plain : this.once(live.join(), () => this.plain.with(live));
  }
}

/** Whether a road has a panel lamp to look at. */
export const hasLamp = (yard: Yard, road: string): boolean => lampRoads(yard).includes(road);
