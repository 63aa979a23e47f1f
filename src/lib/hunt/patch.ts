import type { Element } from '../circuit';
import {
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
  /** Runs that they change or lay. */
  readonly runs: readonly Run[];
  /** Elements that carry something before or after, and not the same. */
  readonly changes: readonly Change[];
  /** Whether some part stands between other nodes than before. */
  readonly moves: boolean;
}

/** The patch of no fault. */
const none: Patch = { runs: [], changes: [], moves: false };

const isPutAsBefore = (now: Element, before: Element): boolean =>
  now.a === before.a && now.b === before.b;

function isSame(now: Element | undefined, before: Element | undefined): boolean {
  if (isOpen(now) && isOpen(before)) return true;
  if (!now || !before || now.kind !== before.kind || !isPutAsBefore(now, before)) return false;
  const [ohms, was] = [now, before].map((each) => ('ohms' in each ? each.ohms : 0));
  return isOpen(now) === isOpen(before) && ohms === was;
}

const byId = (runs: readonly Run[]): ReadonlyMap<string, Element> =>
  new Map(runs.flatMap(elementsOf).map((element) => [element.id, element]));

/** Whether an element joins nothing that it did not join before, and as a conductor where it was none. */
function stays(now: Element | undefined, before: Element | undefined): boolean {
  if (now === undefined || isOpen(now)) return true;
  if (before === undefined || isOpen(before) || isWire(now) !== isWire(before)) return false;
  return isPutAsBefore(now, before) || (now.a === before.b && now.b === before.a);
}

function changeOf(
  { elements, nodes }: Named,
  id: string,
  { now, before }: { readonly now: Element | undefined; readonly before: Element | undefined }
): Change {
  const carrying = [now, before].flatMap((each) => (each && !isOpen(each) ? [each] : []));
  return {
    element: elements.of(id),
    now,
    ends: carrying.flatMap(({ a, b }) => [nodes.of(a), nodes.of(b)]),
    stays: stays(now, before)
  };
}

function patchOf(named: Named, before: readonly Run[], after: readonly Run[]): Patch {
  const runs = after.filter((run) => !before.includes(run));
  const [old, now] = [byId(before.filter((run) => !after.includes(run))), byId(runs)];
  const all = [...new Set([...old.keys(), ...now.keys()])].map((id) => ({
    id,
    now: now.get(id),
    before: old.get(id)
  }));
  return {
    runs,
    changes: all
      .filter((each) => !isSame(each.now, each.before))
      .map((each) => changeOf(named, each.id, each)),
    moves: all.some((each) => each.now && each.before && !isPutAsBefore(each.now, each.before))
  };
}

/** A yard's runs with hands at its contacts: what faults are put into. */
export interface Hands {
  /** The sound runs, panel lamps hung in their places. */
  readonly runs: readonly Run[];
  readonly deckMm: number;
  /** Runs whose contacts do not stand as at rest, by number, and how they stand. */
  readonly awake: ReadonlyMap<number, string>;
}

/** Numbers of the runs in which a fault's parts lie. */
type Touched = ReadonlySet<number>;

const runNumbers = once(
  (yard: Yard): ReadonlyMap<string, number> =>
    new Map(wire(yard).flatMap(({ parts }, number) => parts.map(({ id }) => [id, number] as const)))
);

const standOf = ({ parts }: Run): string => parts.map(({ closed }) => Number(closed)).join('');

/** How the contacts of each run stand with everything switched off and the plug in. */
const atRest = once((yard: Yard): readonly string[] =>
  wire(yard).map((run) => standOf({ ...run, parts: run.parts.map(rested) }))
);

const rested = (part: Part): Part => (part.kind === 'plug' ? { ...part, closed: true } : part);

/** The runs of a scene, without any fault. */
export function handsOf(yard: Yard, scene: Scene): Hands {
  const set = withHands(yard, scene);
  const rest = atRest(yard);
  const stands = set.map((run, number) => [number, standOf(run)] as const);
  return {
    runs: spoilt(set, [], { yard, deckMm: scene.deck }),
    deckMm: scene.deck,
    awake: new Map(stands.filter(([number, stand]) => stand !== rest[number]))
  };
}

/** What each fault does to a yard's wiring, worked out once for each way in which the contacts concerned stand. */
export class Patches {
  private readonly touched = new Map<Fault, Touched>();
  private readonly known = new Map<Fault, Map<string, Patch>>();

  constructor(
    private readonly yard: Yard,
    readonly named: Named
  ) {}

  private touchedBy(fault: Fault): Touched {
    const before = this.touched.get(fault);
    if (before) return before;
    const numbers = runNumbers(this.yard);
    const touched = new Set(faultParts(this.yard, fault).flatMap((id) => numbers.get(id) ?? []));
    this.touched.set(fault, touched);
    return touched;
  }

  private put(faults: readonly Fault[], { runs, deckMm }: Hands): Patch {
    const touched = new Set(faults.flatMap((each) => [...this.touchedBy(each)]));
    const some = runs.filter((_, number) => touched.has(number));
    return patchOf(this.named, some, faulted(some, faults, { yard: this.yard, deckMm }));
  }

  /** What these faults do with hands so. */
  of(faults: readonly Fault[], hands: Hands): Patch {
    const [fault, ...more] = faults;
    if (fault === undefined) return none;
    if (more.length > 0) return this.put(faults, hands);
    const touched = this.touchedBy(fault);
    let key = isByDeck(fault) ? String(hands.deckMm) : '';
    for (const [number, stand] of hands.awake)
      if (touched.has(number)) key += ` ${number} ${stand}`;
    const known = this.known.get(fault) ?? new Map<string, Patch>();
    this.known.set(fault, known);
    const patch = known.get(key) ?? this.put([fault], hands);
    known.set(key, patch);
    return patch;
  }
}
