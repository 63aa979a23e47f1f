import { groups, solve, type Circuit, type Element, type Groups, type Solution } from '../circuit';
import {
  circuitOf,
  feedOf,
  instrumentBetween,
  lampRoads,
  locoNamed,
  ohmsOf,
  sidesOf,
  spoilt,
  startingVolts,
  withHands,
  type Fault,
  type Instrument,
  type Part,
  type Run,
  type Yard
} from '../yard';
import { kernelOf } from './kernel';
import type { Moment, Pair } from './moment';
import { known, Ways, type Range } from './range';

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

/** Keeps the ground in a circuit of which nothing else touches it. */
const earth: Element = {
  kind: 'switch',
  id: 'earth',
  a: 'return',
  b: 'earth',
  closed: false,
  ohms: 0
};

/** A circuit that is asked about some nodes only, and solved once for each thing that is held to it. */
class Kernel {
  private readonly nodes: ReadonlySet<string>;
  private readonly ids: ReadonlySet<string>;
  private base: Solution | undefined;
  private ways: Ways | undefined;
  private joins: Groups | undefined;
  readonly ground = 'return';

  constructor(readonly elements: readonly Element[]) {
    this.nodes = new Set(elements.flatMap(({ a, b }) => [a, b]));
    this.ids = new Set(elements.map(({ id }) => id));
  }

  has(...names: readonly string[]): boolean {
    return names.every((name) => this.nodes.has(name));
  }

  private with(more: readonly Element[]): Solution {
    return solve({ ground: 'return', elements: [earth, ...this.elements, ...more] });
  }

  get bare(): Solution {
    return (this.base ??= this.with([]));
  }

  between(a: string, b: string): number {
    return this.has(a, b) ? (this.bare.between(a, b) ?? 0) : 0;
  }

  amps(id: string): number {
    return this.ids.has(id) ? this.bare.amps(id) : 0;
  }

  /** At most so many ohms lie between two nodes. */
  mostOhms(a: string, b: string): number {
    return (this.ways ??= new Ways(this.elements)).ohms(a, b);
  }

  /** Whether any current could pass from one node to another. */
  isJoined(a: string, b: string): boolean {
    return this.has(a, b) && (this.joins ??= groups(this, () => true)).joined(a, b);
  }

  /** Whether volts and amps rise together in the island of the return, up to so many amps. */
  isLinear(amps: number): boolean {
    return this.elements.every(
      (each) =>
        (each.kind !== 'diode' || this.bare.volts(each.a) === undefined) &&
        (each.kind !== 'source' ||
          each.id === 'lamp supply' ||
          (each.limit ?? Infinity) > amps + Math.abs(this.bare.amps(each.id)))
    );
  }

  /** Volts and amps of an element put between two nodes; a passive one has none where none were. */
  put(element: Element): { readonly volts: number; readonly amps: number } {
    const found = this.with([element]);
    return { volts: found.between(element.a, element.b) ?? 0, amps: found.amps(element.id) };
  }
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

/** Below this no lamp glows and no loco starts, V: what has less without them has no more with them. Source: common practice. */
const NEXT_TO_NOTHING = 1;

/** Volts across a passive load between two nodes. */
const loaded = (kernel: Kernel, element: Element): number =>
  Math.abs(kernel.between(element.a, element.b)) < NEXT_TO_NOTHING ? 0 : kernel.put(element).volts;

/** Volts across an instrument: those without it, less what it loses in the ohms on its way. */
function heldAt(kernel: Kernel, instrument: Element): Range {
  const { a, b } = instrument;
  if (a === b) return known(0);
  const open = Math.abs(kernel.between(a, b));
  if (open < NEXT_TO_NOTHING) return known(0);
  const exact = () => Math.abs(kernel.put(instrument).volts);
  const own = instrument.kind === 'resistor' ? instrument.ohms : 0;
  if (own === 0 || !kernel.isLinear(open / own)) return { low: 0, high: Infinity, exact };
  return { low: (open * own) / (own + kernel.mostOhms(a, b)), high: open, exact };
}

const isConductor = (element: Element): boolean =>
  element.kind === 'resistor' || (element.kind === 'switch' && element.closed);

/** Roads of these to whose rails conductors lead from both sides, and whose loco would run. */
function liveOf(yard: Yard, circuit: Circuit, roads: readonly string[]): readonly string[] {
  if (roads.length === 0) return [];
  const joins = groups(circuit, isConductor);
  const home = new Set(joins.of('return'));
  return roads.filter((road) => {
    const out = new Set(joins.of(feedOf(yard, road)));
    const [feed, back] = rails(road);
    const isReached = (out.has(feed) && home.has(back)) || (out.has(back) && home.has(feed));
    if (!isReached) return false;
    const kernel = new Kernel(kernelOf(circuit, ['return', feed, back]));
    return Math.abs(loaded(kernel, motor(feed, back))) >= startingVolts(LOCO);
  });
}

/** Finds the nodes of a moment's points in runs that a fault has changed. */
class Places {
  /** Each point as one side of a part, or as the node whose name it has. */
  private readonly sides: readonly (readonly [string, Side | undefined])[];

  constructor(sound: readonly Run[], pairs: readonly Pair[]) {
    const known = new Set(pairs.flat());
    const parts = new Map(
      sound.flatMap((run) => run.parts.map((part) => [part.id, { part, run }] as const))
    );
    this.sides = [...known].map((id) => {
      const [, name = '', side] = /^(.+) (panel|rail|fixed|deck) side$/.exec(id) ?? [];
      const found = parts.get(name);
      if (!found) return [id, undefined];
      const isNear = sidesOf(found.part)[0] === `${side} side`;
      return [id, { part: name, isFrom: isNear === (found.run.job === 'feed') }];
    });
  }

  in(runs: readonly Run[]): ReadonlyMap<string, string> {
    return new Map(
      this.sides.map(([id, side]) => [id, side === undefined ? id : endOf(runs, side)])
    );
  }
}

interface Side {
  readonly part: string;
  readonly isFrom: boolean;
}

function endOf(runs: readonly Run[], { part, isFrom }: Side): string {
  for (const run of runs) {
    const index = run.parts.findIndex(({ id }) => id === part);
    if (index < 0) continue;
    const at = isFrom ? index : index + 1;
    return at === 0 ? run.from : at === run.parts.length ? run.to : `${run.id} ${at}`;
  }
  return part;
}

const settledOf = (
  kernel: Kernel,
  nodes: ReadonlyMap<string, string>,
  live: readonly string[]
): Settled => {
  const at = (pair: Pair): Pair => [nodes.get(pair[0]) ?? '', nodes.get(pair[1]) ?? ''];
  return {
    limiting: () => kernel.bare.limiting.some((id) => id !== 'lamp supply'),
    live,
    locoVolts: (road) => loaded(kernel, motor(...rails(road))),
    held: (kind, pair) => heldAt(kernel, instrumentBetween(kind, ...at(pair))),
    between: (pair) => kernel.between(...at(pair)),
    ohms(pair) {
      const [a, b] = at(pair);
      if (a === b) return known(0);
      if (!kernel.isJoined(a, b)) return known(Infinity);
      const most = kernel.mostOhms(a, b);
      const exact = () => {
        const { volts, amps } = kernel.put(instrumentBetween('ohmmeter', a, b));
        return ohmsOf(volts, amps);
      };
      return { low: 0, high: most, exact };
    },
    lampAmps: (road) => kernel.amps(`lamp ${road}`)
  };
};

const isAsBefore = (now: Part, before: Part | undefined): boolean =>
  now === before ||
  (now.id === before?.id &&
    now.closed === before.closed &&
    now.ohms === before.ohms &&
    now.kind === before.kind);

const isRunAsBefore = (now: Run, before: Run | undefined): boolean =>
  now.from === before?.from &&
  now.to === before.to &&
  now.parts.length === before.parts.length &&
  now.parts.every((part, index) => isAsBefore(part, before.parts[index]));

const ohmsIn = (element: Element): string => ('ohms' in element ? String(element.ohms) : '');

const isOpen = (element: Element | undefined): boolean =>
  element === undefined || (element.kind === 'switch' && !element.closed);

/** What a moment shows of a yard with one fault or none: one object for all that show the same. */
export class Settling {
  private readonly known = new Map<string, Settled>();
  private readonly set: readonly Run[];
  private readonly runs: readonly Run[];
  private readonly sound: ReadonlyMap<string, Element>;
  private readonly places: Places;
  /** Elements of the sound yard that matter here. */
  private readonly core: ReadonlySet<string>;
  private readonly plain: Settled;

  constructor(
    private readonly yard: Yard,
    private readonly moment: Moment
  ) {
    this.set = withHands(yard, moment.scene);
    this.runs = this.spoilt([]);
    const circuit = circuitOf(yard, moment.scene, this.runs);
    this.sound = new Map(circuit.elements.map((element) => [element.id, element]));
    this.places = new Places(this.runs, moment.pairs);
    const nodes = this.places.in(this.runs);
    this.core = new Set(this.kernel(circuit, nodes).map(({ id }) => id));
    this.plain = this.settle(circuit, nodes, moment.others);
  }

  private spoilt(faults: readonly Fault[]): readonly Run[] {
    const now = { yard: this.yard, deckMm: this.moment.scene.deck };
    return spoilt(this.set, faults, now);
  }

  private kernel(circuit: Circuit, nodes: ReadonlyMap<string, string>): readonly Element[] {
    const { roads } = this.moment;
    return kernelOf(circuit, ['return', ...nodes.values(), ...roads.flatMap(rails)]);
  }

  private settle(
    circuit: Circuit,
    nodes: ReadonlyMap<string, string>,
    others: readonly string[]
  ): Settled {
    const elements = this.kernel(circuit, nodes);
    const live = liveOf(this.yard, circuit, others);
    const key = [
      ...elements.map((each) => `${each.id}:${each.a}:${each.b}:${ohmsIn(each)}`),
      ...nodes.values(),
      live.join()
    ].join('|');
    const settled = this.known.get(key) ?? settledOf(new Kernel(elements), nodes, live);
    this.known.set(key, settled);
    return settled;
  }

  /** Whether a changed element changes nothing here: it was open and is, or hung loose and goes, or has other ohms. */
  private isIdle(now: Element): boolean {
    const before = this.sound.get(now.id);
    if (isOpen(now) && isOpen(before)) return true;
    if (before === undefined || this.core.has(now.id)) return false;
    const isPut = now.a === before.a && now.b === before.b;
    return isOpen(now) || (isPut && !isOpen(before) && now.kind === before.kind);
  }

  /** Whether an element stands where it stood, and conducts no better. */
  private isLess(now: Element): boolean {
    const before = this.sound.get(now.id);
    if (isOpen(now)) return true;
    const isPut = now.a === before?.a && now.b === before.b && now.kind === before.kind;
    return isPut && !isOpen(before) && now.kind !== 'diode';
  }

  /** What the moment shows with this fault; the same object for faults that show the same. */
  of(fault: Fault | undefined): Settled {
    if (fault === undefined) return this.plain;
    const { yard, moment, sound } = this;
    const runs = this.spoilt([fault]);
    const others = runs.filter((run, index) => !isRunAsBefore(run, this.runs[index]));
    if (others.length === 0) return this.plain;
    const bare = { ...moment.scene, locos: {} };
    const parts = new Set(others.flatMap((run) => run.parts.map(({ id }) => id)));
    const changed = circuitOf(yard, bare, others).elements.filter(({ id }) => parts.has(id));
    if (changed.every((element) => this.isIdle(element))) return this.plain;
    const elements = [...[...sound.values()].filter(({ id }) => !parts.has(id)), ...changed];
    // Less conducts than before: no road goes live by it that was dead.
    const isLess = this.plain.live.length === 0 && changed.every((each) => this.isLess(each));
    const asked = isLess ? [] : moment.others;
    return this.settle({ ground: 'return', elements }, this.places.in(runs), asked);
  }
}

/** Whether a road has a panel lamp to look at. */
export const hasLamp = (yard: Yard, road: string): boolean => lampRoads(yard).includes(road);
