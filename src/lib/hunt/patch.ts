import type { Element } from '../circuit';
import {
  elementsIn,
  elementsOf,
  faulted,
  faultParts,
  isByDeck,
  once,
  spoilt,
  wire,
  withHands,
  type Fault,
  type Part,
  type Run,
  type Scene,
  type Yard
} from '../yard';

/** Whether an element carries nothing, whatever it joins: it is not there, or an open contact. */
export const isOpen = (element: Element | undefined): boolean =>
  element === undefined || (element.kind === 'switch' && !element.closed);

/** Ω; 0 where it has none of its own. */
export const ohmsIn = (element: Element): number => ('ohms' in element ? element.ohms : 0);

export const isWire = ({ kind }: Element): boolean => kind === 'resistor' || kind === 'switch';

/** Numbers of names: the same for all moments of a yard. */
export class Numbers {
  private readonly known = new Map<string, number>();

  of(name: string): number {
    const before = this.known.get(name);
    if (before !== undefined) return before;
    this.known.set(name, this.known.size);
    return this.known.size - 1;
  }

  get size(): number {
    return this.known.size;
  }
}

/** Numbers of a yard's elements and nodes. */
export interface Named {
  readonly elements: Numbers;
  readonly nodes: Numbers;
}

/** An element before and after; undefined where it is not there. */
export interface Change {
  /** Number of the element. */
  readonly element: number;
  readonly now: Element | undefined;
  /** Nodes between which it carries or carried something, by number; those where it does now first. */
  readonly ends: readonly number[];
  /** Whether it joins nothing that it did not join before. */
  readonly stays: boolean;
}

/** What faults do to the wiring while its contacts stand in one way. */
export interface Patch {
  /** Elements that carry something before or after, and not the same. */
  readonly changes: readonly Change[];
  /** Elements that stand between other nodes than before. */
  readonly moved: readonly Element[];
}

/** The patch of no fault. */
export const none: Patch = { changes: [], moved: [] };

const isPutAsBefore = (now: Element, before: Element): boolean =>
  now.a === before.a && now.b === before.b;

function isSame(now: Element | undefined, before: Element | undefined): boolean {
  if (isOpen(now) && isOpen(before)) return true;
  if (!now || !before || now.kind !== before.kind || !isPutAsBefore(now, before)) return false;
  return isOpen(now) === isOpen(before) && ohmsIn(now) === ohmsIn(before);
}

/** Whether an element joins nothing that it did not join before, and as a conductor where it was none. */
function stays(now: Element | undefined, before: Element | undefined): boolean {
  if (now === undefined || isOpen(now)) return true;
  if (before === undefined || isOpen(before) || isWire(now) !== isWire(before)) return false;
  return isPutAsBefore(now, before) || (now.a === before.b && now.b === before.a);
}

function changeOf(
  { elements, nodes }: Named,
  now: Element | undefined,
  before: Element | undefined
): Change {
  const ends: number[] = [];
  for (const each of [now, before])
    if (each && !isOpen(each)) ends.push(nodes.of(each.a), nodes.of(each.b));
  return {
    element: elements.of((now ?? before)?.id ?? ''),
    now,
    ends,
    stays: stays(now, before)
  };
}

function patchOf(named: Named, before: readonly Run[], after: readonly Run[]): Patch {
  const changes: Change[] = [];
  const moved: Element[] = [];
  const compare = (now: Element | undefined, was: Element | undefined) => {
    if (!isSame(now, was)) changes.push(changeOf(named, now, was));
    if (now && was && !isPutAsBefore(now, was)) moved.push(now);
  };
  const gone = before.filter((run) => !after.includes(run)).flatMap(elementsOf);
  const old = new Map(gone.map((element) => [element.id, element]));
  for (const run of after) {
    if (before.includes(run)) continue;
    for (const now of elementsIn(run)) {
      compare(now, old.get(now.id));
      old.delete(now.id);
    }
  }
  for (const was of old.values()) compare(undefined, was);
  return { changes, moved };
}

/** A yard's runs with hands at its contacts: what faults are put into. */
export interface Hands {
  /** The sound runs, panel lamps hung in their places. */
  readonly runs: readonly Run[];
  readonly deckMm: number;
  /** Runs whose contacts do not stand as at rest, by number, and how they stand. */
  readonly awake: ReadonlyMap<number, string>;
}

/** Numbers of the runs in which a fault's parts lie, in their order. */
type Touched = readonly number[];

const inOrder = (numbers: readonly number[]): Touched =>
  [...new Set(numbers)].sort((a, b) => a - b);

const runNumbers = once(
  (yard: Yard): ReadonlyMap<string, number> =>
    new Map(wire(yard).flatMap(({ parts }, number) => parts.map(({ id }) => [id, number] as const)))
);

const standOf = ({ parts }: Run): string => parts.map(({ closed }) => Number(closed)).join('');

const rested = (part: Part): Part => (part.kind === 'plug' ? { ...part, closed: true } : part);

/** A yard's runs with everything switched off and the plug in. */
const atRest = once((yard: Yard): readonly Run[] =>
  wire(yard).map((run) => ({ ...run, parts: run.parts.map(rested) }))
);

const handsWith = (yard: Yard, set: readonly Run[], deckMm: number): Hands => {
  const rest = atRest(yard);
  const stands = set.map((run, number) => [number, standOf(run)] as const);
  return {
    runs: spoilt(set, [], { yard, deckMm }),
    deckMm,
    awake: new Map(stands.filter(([number, stand]) => stand !== standOf(rest[number] as Run)))
  };
};

/** The runs of a scene, without any fault. */
export const handsOf = (yard: Yard, scene: Scene): Hands =>
  handsWith(yard, withHands(yard, scene), scene.deck);

/** The runs with everything switched off and the plug in, without any fault. */
export const handsAtRest = (yard: Yard): Hands => handsWith(yard, atRest(yard), 0);

/** What each fault does to a yard's wiring, worked out once for each way in which the contacts concerned stand. */
export class Patches {
  private readonly touched = new Map<Fault, Touched>();
  private readonly known = new Map<Fault, Map<string, Patch>>();

  constructor(
    private readonly yard: Yard,
    readonly named: Named
  ) {}

  /** Numbers of the runs that a fault changes. */
  touchedBy(fault: Fault): Touched {
    const before = this.touched.get(fault);
    if (before) return before;
    const numbers = runNumbers(this.yard);
    const all = faultParts(this.yard, fault).flatMap((id) => numbers.get(id) ?? []);
    const touched = inOrder(all);
    this.touched.set(fault, touched);
    return touched;
  }

  private put(faults: readonly Fault[], touched: Touched, { runs, deckMm }: Hands): Patch {
    const some = touched.map((number) => runs[number] as Run);
    return patchOf(this.named, some, faulted(some, faults, { yard: this.yard, deckMm }));
  }

  /** What these faults do with hands so. */
  of(faults: readonly Fault[], hands: Hands): Patch {
    const [fault] = faults;
    if (fault === undefined) return none;
    if (faults.length > 1)
      return this.put(faults, inOrder(faults.flatMap((each) => this.touchedBy(each))), hands);
    const touched = this.touchedBy(fault);
    let key = isByDeck(fault) ? String(hands.deckMm) : '';
    for (const [number, stand] of hands.awake)
      if (touched.includes(number)) key += ` ${number} ${stand}`;
    const known = this.known.get(fault) ?? new Map<string, Patch>();
    this.known.set(fault, known);
    const patch = known.get(key) ?? this.put(faults, touched, hands);
    known.set(key, patch);
    return patch;
  }
}
