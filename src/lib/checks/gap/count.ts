import { caseKey, closesLoop, coneOf, type Case } from './loop';
import { once } from './once';
import type { Control } from './settings';
import type { Wiring } from './wiring';

/** Cases whose controls overlap, with the controls they depend on. */
export interface Cluster {
  readonly cases: readonly Case[];
  readonly controls: readonly number[];
}

/** Most choices to try for one cluster. */
const MOST_CHOICES = 2 ** 16;

/** A road that depends on its controls in too many ways to try. */
export class TooManyError extends Error {
  readonly code = 'too-many-choices';
  constructor(readonly where: string) {
    super(`Road ${where} can be live in too many ways: at most ${MOST_CHOICES} are tried.`);
    this.name = 'TooManyError';
  }
}

/** A stand for some controls, by index; the others are not chosen yet. */
export type Choice = readonly (number | undefined)[];

/** Which contacts a setting makes; one not chosen yet makes what all of its stands make, or in hope what any does. */
export const madeBy =
  ({ switched }: Wiring, choice: Choice, hope = false) =>
  (contact: number): boolean => {
    const { by, made } = switched[contact] as Wiring['switched'][number];
    const stand = choice[by];
    if (stand !== undefined) return made[stand] as boolean;
    return hope ? made.includes(true) : !made.includes(false);
  };

/** How many settings of its own controls make a cluster live; of a single case worked out once. */
function unsafeKnown(cluster: Cluster, all: readonly Control[]): bigint {
  const [only, ...others] = cluster.cases as readonly [Case, ...Case[]];
  const count = () => unsafeIn(cluster, all);
  return others.length === 0 ? once(only.network.known.unsafe, caseKey(only), count) : count();
}

/** The controls that a case depends on, or undefined when no setting can make it live. */
const controlsIn = (each: Case): readonly number[] | undefined =>
  once(each.network.known.controls, caseKey(each), () => {
    const { contacts } = coneOf(each);
    const { switched } = each.network.wiring;
    return contacts && [...new Set(contacts.map((contact) => switched[contact]?.by as number))];
  });

/** The lists' first items, then their second ones, and so on, each item once. */
function interleaved(lists: readonly (readonly number[])[]): readonly number[] {
  const longest = Math.max(...lists.map(({ length }) => length));
  const rounds = Array.from({ length: longest }, (_, round) =>
    lists.flatMap((list) => list.slice(round, round + 1))
  );
  return [...new Set(rounds.flat())];
}

/** Clusters taken as one. */
export const joinedCluster = (parts: readonly Cluster[]): Cluster => ({
  cases: parts.flatMap(({ cases }) => cases),
  controls: interleaved(parts.map(({ controls }) => controls))
});

/** A road's cases with each source as one cluster; undefined when no setting can make it live. */
export function clusterOf(cases: readonly Case[]): Cluster | undefined {
  const live = cases.filter((each) => controlsIn(each));
  if (live.length === 0) return undefined;
  return { cases: live, controls: interleaved(live.map((each) => controlsIn(each) ?? [])) };
}

/**
 * Cases that some setting can make live, gathered where they share controls. The controls nearest to
 * the rails of each case come first: they settle most.
 */
export function clusters(cases: readonly Case[]): readonly Cluster[] {
  const found: { readonly cases: readonly Case[]; readonly controls: ReadonlySet<number> }[] = [];
  for (const each of cases) {
    const own = controlsIn(each);
    if (!own) continue;
    const touched = found.filter(({ controls }) => own.some((one) => controls.has(one)));
    for (const other of touched) found.splice(found.indexOf(other), 1);
    found.push({
      cases: [...touched.flatMap((other) => other.cases), each],
      controls: new Set([...own, ...touched.flatMap((other) => [...other.controls])])
    });
  }
  return found.map((cluster) => ({
    cases: cluster.cases,
    controls: interleaved(cluster.cases.map((each) => controlsIn(each) ?? []))
  }));
}

const sizeOf = (all: readonly Control[], index: number): number =>
  (all[index] as Control).stands.length;

/** Whether a setting makes one of the cases live. */
export const isLiveAt = (cases: readonly Case[], setting: Choice): boolean =>
  cases.some((each) => closesLoop(each, madeBy(each.network.wiring, setting)));

const isLive = ({ cases }: Cluster, choice: Choice, hope: boolean): boolean =>
  cases.some((each) => closesLoop(each, madeBy(each.network.wiring, choice, hope)));

/** When each contact of a cluster is made, by its control. */
function contactsBy({ cases }: Cluster): ReadonlyMap<number, readonly (readonly boolean[])[]> {
  const found = new Map<number, Set<readonly boolean[]>>();
  for (const each of cases) {
    for (const contact of coneOf(each).contacts ?? []) {
      const { by, made } = each.network.wiring.switched[contact] as Wiring['switched'][number];
      const own = found.get(by) ?? new Set();
      found.set(by, own.add(made));
    }
  }
  return new Map([...found].map(([by, made]) => [by, [...made]]));
}

/** By stand of a control: whether it makes each of these contacts which any stand makes, and whether it makes the least. */
const extremes = (made: readonly (readonly boolean[])[], stands: number) =>
  Array.from({ length: stands }, (_, stand) => ({
    most: made.every((each) => each[stand] === true || !each.includes(true)),
    least: made.every((each) => each[stand] === false || !each.includes(false))
  }));

/** Some controls chosen, and what is known already of the others all made, or none. */
interface Branch {
  readonly choice: Choice;
  readonly next: number;
  readonly hope?: boolean;
  readonly sure?: boolean;
}

/**
 * The choices that make a cluster live whatever the controls left open do; each setting that makes it
 * live belongs to exactly one. Controls are chosen nearest to the rails first. A branch ends when it is
 * live though nothing left open is made, or dead though all of it is: one more closed contact never
 * takes a path away. A stand that makes all that its control can, or the least, leaves what was hoped,
 * or sure, as it was.
 *
 * @throws TooManyError after 65 536 choices.
 */
export function liveChoices(cluster: Cluster, all: readonly Control[]): readonly Choice[] {
  const found: Choice[] = [];
  const contacts = contactsBy(cluster);
  const stands = cluster.controls.map((control) =>
    extremes(contacts.get(control) ?? [], sizeOf(all, control))
  );
  const open: Branch[] = [{ choice: all.map(() => undefined), next: 0 }];
  let tried = 0;
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (++tried > MOST_CHOICES) throw new TooManyError(cluster.cases[0]?.rails.name ?? '');
    const { choice, next, hope, sure } = at;
    if (sure === false && next === stands.length) continue;
    if (!(hope ?? isLive(cluster, choice, true))) continue;
    const control = cluster.controls[next];
    if (control === undefined || (sure ?? isLive(cluster, choice, false))) {
      found.push(choice);
      continue;
    }
    stands[next]?.forEach(({ most, least }, stand) => {
      open.push({
        choice: choice.with(control, stand),
        next: next + 1,
        ...(most ? { hope: true } : {}),
        ...(least ? { sure: false } : {})
      });
    });
  }
  return found;
}

/** How many settings of some controls these choices stand for. */
export const settingsIn = (
  choices: readonly Choice[],
  controls: readonly number[],
  all: readonly Control[]
): bigint =>
  choices.reduce((sum, choice) => {
    const left = controls.filter((index) => choice[index] === undefined);
    return sum + settingsCount(left.map((index) => all[index] as Control));
  }, 0n);

/** How many settings of its own controls make a cluster live. */
const unsafeIn = (cluster: Cluster, all: readonly Control[]): bigint =>
  settingsIn(liveChoices(cluster, all), cluster.controls, all);

/** How many settings these controls have. */
export const settingsCount = (controls: readonly Control[]): bigint =>
  controls.reduce((product, { stands }) => product * BigInt(stands.length), 1n);

/**
 * How many settings of all controls make one of the cases live:
 * all − Π(safe settings of a cluster) · Π(stands of a control in no cluster).
 */
export function unsafeCount(cases: readonly Case[], all: readonly Control[]): bigint {
  const found = clusters(cases);
  const used = new Set(found.flatMap(({ controls }) => controls));
  const free = settingsCount(all.filter((_, index) => !used.has(index)));
  const safe = found.reduce((product, cluster) => {
    const own = settingsCount(cluster.controls.map((index) => all[index] as Control));
    return product * (own - unsafeKnown(cluster, all));
  }, free);
  return settingsCount(all) - safe;
}
