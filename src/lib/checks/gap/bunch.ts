import { joinedCluster, settingsCount, unsafeIn, type Cluster } from './count';
import type { Control } from './settings';

/** Roads that share controls, and how many settings of these keep all of them dead. */
export interface Bunch extends Cluster {
  readonly safe: bigint;
}

const pick = (controls: readonly number[], all: readonly Control[]): readonly Control[] =>
  controls.map((index) => all[index] as Control);

/** How many settings these controls have. */
export const sizeOf = (controls: readonly number[], all: readonly Control[]): bigint =>
  settingsCount(pick(controls, all));

/** Counts a cluster; undefined when no setting makes it live. */
export function bunchOf(cluster: Cluster, all: readonly Control[]): Bunch | undefined {
  const size = sizeOf(cluster.controls, all);
  const safe = size - unsafeIn(cluster, all);
  return safe === size ? undefined : { ...cluster, safe };
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
    const cluster = joinedCluster(group);
    const size = sizeOf(cluster.controls, this.all);
    const bunch = { ...cluster, safe: size - unsafeIn(cluster, this.all) };
    this.#known.set(key, bunch);
    return bunch;
  }
}
