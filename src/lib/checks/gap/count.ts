import { closesLoop, cone, type Case } from './loop';
import type { Control, Setting } from './settings';
import type { Wiring } from './wiring';

/** Cases whose controls overlap, with the controls they depend on. */
export interface Cluster {
  readonly cases: readonly Case[];
  readonly controls: readonly number[];
}

/** Most settings of the controls of one cluster: beyond it there are too many to try. */
const MOST_SETTINGS = 2 ** 20;

/** A road that depends on more controls than can be tried. */
export class TooManyError extends Error {
  readonly code = 'too-many-controls';
  constructor(
    readonly where: string,
    readonly met: number
  ) {
    super(`Road ${where} depends on ${met} settings: at most ${MOST_SETTINGS} can be tried.`);
    this.name = 'TooManyError';
  }
}

/** Which contacts a setting makes. */
export const madeBy =
  ({ switched }: Wiring, setting: Setting) =>
  (contact: number): boolean => {
    const { by, made } = switched[contact] as Wiring['switched'][number];
    return made[setting[by] ?? 0] as boolean;
  };

/** Cases that some setting can make live, gathered where they share controls. */
export function clusters(cases: readonly Case[]): readonly Cluster[] {
  const found: Cluster[] = [];
  for (const each of cases) {
    const contacts = cone(each);
    if (!contacts) continue;
    const own = new Set(contacts.map((c) => each.network.wiring.switched[c]?.by as number));
    const touched = found.filter(({ controls }) => controls.some((one) => own.has(one)));
    for (const other of touched) found.splice(found.indexOf(other), 1);
    found.push({
      cases: [...touched.flatMap((other) => other.cases), each],
      controls: [...new Set([...own, ...touched.flatMap((other) => other.controls)])]
    });
  }
  return found;
}

const sizeOf = (all: readonly Control[], index: number): number =>
  (all[index] as Control).stands.length;

/** Every setting of some of the controls, the others at rest. */
function settings(all: readonly Control[], some: readonly number[]): readonly Setting[] {
  return some.reduce<readonly Setting[]>(
    (before, index) =>
      Array.from({ length: sizeOf(all, index) }, (_, stand) =>
        before.map((setting) => setting.with(index, stand))
      ).flat(),
    [all.map(() => 0)]
  );
}

/** The settings of a cluster's controls under which one of its roads is live. */
export function unsafeSettings(
  { cases, controls }: Cluster,
  all: readonly Control[]
): readonly Setting[] {
  const many = controls.reduce((product, index) => product * sizeOf(all, index), 1);
  if (many > MOST_SETTINGS) throw new TooManyError(cases[0]?.rails.name ?? '', many);
  return settings(all, controls).filter((setting) =>
    cases.some((each) => closesLoop(each, madeBy(each.network.wiring, setting)))
  );
}

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
    return product * (own - BigInt(unsafeSettings(cluster, all).length));
  }, free);
  return settingsCount(all) - safe;
}
