import { sizeOf } from './count';
import { livesOf, type Lives } from './live';
import type { Case } from './loop';
import type { Control } from './settings';

/** Roads that share controls, and how many settings of these keep all of them dead. */
export interface Bunch extends Pick<Lives, 'controls' | 'fewest'> {
  readonly cases: readonly Case[];
  readonly safe: bigint;
}

/** Counts some cases, by the controls that have a say; undefined when no setting makes one live. */
export function bunchOf(cases: readonly Case[], all: readonly Control[]): Bunch | undefined {
  const { controls, count, fewest } = livesOf(cases, all);
  return count === 0n
    ? undefined
    : { cases, controls, fewest, safe: sizeOf(controls, all) - count };
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
    const bunch = bunchOf(
      group.flatMap(({ cases }) => cases),
      this.all
    ) as Bunch;
    this.#known.set(key, bunch);
    return bunch;
  }
}
