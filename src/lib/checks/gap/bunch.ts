import {
  joinedCluster,
  liveChoices,
  settingsCount,
  settingsIn,
  type Choice,
  type Cluster
} from './count';
import type { Control } from './settings';

/** Roads that share controls, and how many settings of these keep all of them dead. */
export interface Bunch extends Cluster {
  /** The settings that make one of them live. */
  readonly choices: readonly Choice[];
  readonly safe: bigint;
}

const pick = (controls: readonly number[], all: readonly Control[]): readonly Control[] =>
  controls.map((index) => all[index] as Control);

/** How many settings these controls have. */
export const sizeOf = (controls: readonly number[], all: readonly Control[]): bigint =>
  settingsCount(pick(controls, all));

/** Counts a cluster, by the controls that its live settings ask for; undefined when it has none. */
export function bunchOf(cluster: Cluster, all: readonly Control[]): Bunch | undefined {
  const choices = liveChoices(cluster, all);
  if (choices.length === 0) return undefined;
  const controls = cluster.controls.filter((control) =>
    choices.some((choice) => choice[control] !== undefined)
  );
  const safe = sizeOf(controls, all) - settingsIn(choices, controls, all);
  return { cases: cluster.cases, controls, choices, safe };
}

/** Joins bunches that share controls, each set of them worked out once. */
export class Joiner {
  readonly #ids = new Map<Bunch, number>();
  readonly #known = new Map<string, Bunch>();
  constructor(readonly all: readonly Control[]) {}

  idOf(bunch: Bunch): number {
    const known = this.#ids.get(bunch);
    if (known !== undefined) return known;
    this.#ids.set(bunch, this.#ids.size);
    return this.#ids.size - 1;
  }

  joined(bunches: readonly Bunch[]): readonly Bunch[] {
    const owner = new Map<number, Bunch[]>();
    const groups = new Set<Bunch[]>();
    for (const bunch of bunches) {
      const own = [bunch];
      for (const control of bunch.controls) {
        const other = owner.get(control);
        if (other && other !== own) this.#merge(own, other, owner, groups);
        owner.set(control, own);
      }
      groups.add(own);
    }
    return [...groups].map((group) => this.#one(group));
  }

  #merge(own: Bunch[], other: Bunch[], owner: Map<number, Bunch[]>, groups: Set<Bunch[]>): void {
    groups.delete(other);
    own.push(...other);
    for (const { controls } of other) for (const each of controls) owner.set(each, own);
  }

  #one(group: readonly Bunch[]): Bunch {
    if (group.length === 1) return group[0] as Bunch;
    const key = group
      .map((bunch) => this.idOf(bunch))
      .sort((a, b) => a - b)
      .join();
    const known = this.#known.get(key);
    if (known) return known;
    const bunch = bunchOf(joinedCluster(group), this.all) as Bunch;
    this.#known.set(key, bunch);
    return bunch;
  }
}
