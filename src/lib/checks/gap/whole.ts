import { apply, faulted, faultParts, placed, type Fault, type Placed, type Run } from '../../yard';
import type { Ground } from './proof';
import {
  holeOfPin,
  isNamed,
  laid,
  postsOf,
  standScenes,
  wiringFrom,
  type Laid,
  type Pinned,
  type Posts,
  type Wiring
} from './wiring';

/** A yard without faults, with the plug in or out, taken apart so that faults can be put in quickly. */
export interface Whole {
  readonly ground: Ground;
  readonly plug: 'in' | 'out';
  readonly posts: Posts;
  /** Its runs with every control at the k-th stand. */
  readonly stands: readonly (readonly Run[])[];
  /** Its parts, by their run's index. */
  readonly parts: readonly (readonly Laid[])[];
  /** The index of the run in which a part lies. */
  readonly runOf: ReadonlyMap<string, number>;
  readonly wiring: Wiring;
}

export function wholeOf(ground: Ground, plug: Whole['plug']): Whole {
  const { yard } = ground;
  const posts = postsOf(yard);
  const stands = standScenes({ ...ground, plug }).map((scene) => apply(yard, scene));
  const runs = stands[0] as readonly Run[];
  const parts = runs.map((_, index) =>
    laid(
      ground.controls,
      posts,
      stands.map((each) => placed(each[index] as Run)),
      () => undefined
    )
  );
  const runOf = new Map(runs.flatMap((run, index) => run.parts.map(({ id }) => [id, index])));
  return { ground, plug, posts, stands, parts, runOf, wiring: wiringFrom(posts, parts, []) };
}

/** A wiring with faults in it, and what they change. */
export interface Hurt {
  readonly wiring: Wiring;
  /** Parts that they change, take away or add: as they are without them and with them. */
  readonly before: readonly Laid[];
  readonly after: readonly Laid[];
}

/** When a pin contact in these runs is made that a fault names. */
function whenMade(
  { ground: { yard } }: Whole,
  faults: readonly Fault[],
  runs: readonly Run[],
  { id, closed }: Placed
): Pinned['when'] | undefined {
  if (!isNamed(faults, id)) return undefined;
  const { deckMm } = holeOfPin(yard, id);
  const madeAt = (home: boolean) => {
    const set = runs.map((run) => ({
      ...run,
      parts: run.parts.map((part) => (part.id === id ? { ...part, closed: home } : part))
    }));
    return faulted(set, faults, { yard, deckMm }).some(({ parts }) =>
      parts.some((part) => part.id === id && part.closed)
    );
  };
  return { elsewhere: closed, under: madeAt(false), home: madeAt(true) };
}

const isSame = (a: Laid, b: Laid | undefined): boolean =>
  b !== undefined &&
  a.from === b.from &&
  a.to === b.to &&
  a.role === b.role &&
  a.closed.every((closed, stand) => closed === b.closed[stand]) &&
  a.pin?.when.elsewhere === b.pin?.when.elsewhere &&
  a.pin?.when.under === b.pin?.when.under &&
  a.pin?.when.home === b.pin?.when.home;

/** Parts of one list that are not the same in the other. */
function notIn(parts: readonly Laid[], others: readonly Laid[]): readonly Laid[] {
  const byId = new Map(others.map((part) => [part.id, part]));
  return parts.filter((part) => !isSame(part, byId.get(part.id)));
}

/** Puts faults into a yard: only the runs are worked out anew in which they lie. */
export function hurtOf(whole: Whole, faults: readonly Fault[]): Hurt {
  const { ground, posts, stands, parts, runOf } = whole;
  const { yard, rest } = ground;
  const touched = new Set(
    faults.flatMap((fault) => faultParts(yard, fault)).map((id) => runOf.get(id) as number)
  );
  const pick = (runs: readonly Run[]) => [...touched].map((index) => runs[index] as Run);
  const now = { yard, deckMm: rest.deck };
  const sound = [...touched].flatMap((index) => parts[index] as readonly Laid[]);
  const hurt = laid(
    ground.controls,
    posts,
    stands.map((runs) => faulted(pick(runs), faults, now).flatMap(placed)),
    (part) => whenMade(whole, faults, pick(stands[0] as readonly Run[]), part)
  );
  const before = notIn(sound, hurt);
  const after = notIn(hurt, sound);
  if (before.length + after.length === 0 && !faults.some((fault) => 'touching' in fault)) {
    return { wiring: whole.wiring, before, after };
  }
  const others = parts.filter((_, index) => !touched.has(index));
  return { wiring: wiringFrom(posts, [...others, hurt], faults), before, after };
}
