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

/** An element before and after; undefined where it is not there. */
export interface Change {
  readonly id: string;
  readonly before: Element | undefined;
  readonly now: Element | undefined;
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
export const none: Patch = { runs: [], changes: [], moves: false };

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

function patchOf(before: readonly Run[], after: readonly Run[]): Patch {
  const runs = after.filter((run) => !before.includes(run));
  const [old, now] = [byId(before.filter((run) => !after.includes(run))), byId(runs)];
  const ids = [...new Set([...old.keys(), ...now.keys()])];
  const all = ids.map((id): Change => ({ id, before: old.get(id), now: now.get(id) }));
  return {
    runs,
    changes: all.filter((each) => !isSame(each.now, each.before)),
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

  constructor(private readonly yard: Yard) {}

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
    return patchOf(some, faulted(some, faults, { yard: this.yard, deckMm }));
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
