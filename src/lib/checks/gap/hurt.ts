import type { Fault } from '../../yard';
import { endKey, file } from './atlas';
import { Joiner, type Bunch } from './bunch';
import { sizeOf } from './count';
import { plainest } from './plainest';
import type { GapProof, Ground } from './proof';
import { HurtPlug, type Sound } from './sound';

/** A road of some moments that may differ: as it was, and as it is with the faults. */
interface Change {
  readonly road: string;
  readonly before: Bunch | undefined;
  readonly now: Bunch | undefined;
}

/** Moments whose counts change alike: the bunches that faults may change, and those that take their place. */
interface Alike {
  readonly before: readonly Bunch[];
  readonly after: readonly Bunch[];
  readonly moments: number[];
}

/** How a road that may differ changes, by the kind of moment; undefined where it is dead with the faults and without. */
function changeOf(hurt: HurtPlug, road: string, kind: number): Change | undefined {
  if (!hurt.open.has(road, kind)) return undefined;
  const before = hurt.sound.view.bunch(road, kind);
  const now = hurt.view.bunch(road, kind);
  return before || now ? { road, before, now } : undefined;
}

/** The roads that change, by moment. */
function changesOf({ atlas }: Ground, hurt: HurtPlug): ReadonlyMap<number, readonly Change[]> {
  const found = new Map<number, Change[]>();
  for (const road of hurt.open.roads) {
    const known = new Map<number, Change | undefined>();
    for (const index of atlas.openAt.get(road) ?? []) {
      const kind = atlas.kindOf[index] as number;
      if (!known.has(kind)) known.set(kind, changeOf(hurt, road, kind));
      const change = known.get(kind);
      if (change) file(found, index, change);
    }
  }
  return found;
}

/** Unsafe states more than in the sound yard, with the pin home and out; less than 0 when there are fewer. */
interface More {
  home: bigint;
  out: bigint;
}

/** How the counts of one plug state change, moments that change alike taken together. */
class Recount {
  /** Roads that change in some moment. */
  readonly roads = new Set<string>();
  readonly #joiner: Joiner;
  readonly #touched = new Set<number>();
  readonly #changes: ReadonlyMap<number, readonly Change[]>;

  constructor(
    readonly ground: Ground,
    readonly hurt: HurtPlug
  ) {
    this.#joiner = new Joiner(ground.controls);
    this.#changes = changesOf(ground, hurt);
    for (const { road, before, now } of new Set([...this.#changes.values()].flat())) {
      this.roads.add(road);
      for (const control of before?.controls ?? []) this.#touched.add(control);
      for (const control of now?.controls ?? []) this.#touched.add(control);
    }
  }

  more(): More {
    const more = { home: 0n, out: 0n };
    for (const alike of this.#alike().values()) this.#add(more, alike);
    return more;
  }

  #alike(): ReadonlyMap<string, Alike> {
    const found = new Map<string, Alike>();
    for (const [index, changes] of this.#changes) {
      const before = this.#before(index, changes);
      const after = this.#after(index, changes, before);
      const ids = (bunches: readonly Bunch[]) =>
        bunches.map((each) => this.#joiner.idOf(each)).join();
      const key = `${ids(before)} ${ids(after)}`;
      const known = found.get(key);
      if (known) known.moments.push(index);
      else found.set(key, { before, after, moments: [index] });
    }
    return found;
  }

  /** The sound bunches of a moment that depend on controls which faults may bring in, or have a road that differs. */
  #before(index: number, changes: readonly Change[]): readonly Bunch[] {
    const { counts } = this.hurt.sound;
    return (counts[index]?.bunches ?? []).filter(
      ({ controls, cases }) =>
        controls.some((control) => this.#touched.has(control)) ||
        (controls.length === 0 && changes.some(({ road }) => cases[0]?.rails.name === road))
    );
  }

  /** The same with the faults in: roads that do not differ as they were. */
  #after(index: number, changes: readonly Change[], before: readonly Bunch[]): readonly Bunch[] {
    const { view } = this.hurt.sound;
    const { atlas } = this.ground;
    const changed = new Set(changes.map(({ road }) => road));
    const kept = new Set(before.flatMap(({ cases }) => cases.map(({ rails }) => rails.name)));
    return [
      ...[...kept].flatMap((road) =>
        changed.has(road) ? [] : (view.bunch(road, atlas.kindOf[index] as number) ?? [])
      ),
      ...changes.flatMap(({ now }) => now ?? [])
    ];
  }

  /** all − safe, before and after: what the other bunches and free controls give is the same in both. */
  #add(more: More, { before, after, moments }: Alike): void {
    const own = new Set([...this.#touched, ...before.flatMap(({ controls }) => controls)]);
    const old = this.#safe(before, own);
    const now = this.#safe(this.#joiner.joined(after), own);
    if (old === now) return;
    for (const index of moments) {
      const rest = this.#rest(index, before, own, old);
      const pin = this.ground.moments[index]?.pin ?? 'out';
      more[pin] += (old - now) * rest;
    }
  }

  /** Safe settings of these controls. */
  #safe(bunches: readonly Bunch[], own: ReadonlySet<number>): bigint {
    const used = new Set(bunches.flatMap(({ controls }) => controls));
    const free = [...own].filter((control) => !used.has(control));
    const { controls } = this.ground;
    return bunches.reduce((product, { safe }) => product * safe, sizeOf(free, controls));
  }

  /** Safe settings of all other controls in a moment. */
  #rest(index: number, before: readonly Bunch[], own: ReadonlySet<number>, old: bigint): bigint {
    const count = this.hurt.sound.counts[index];
    if (!count) return 0n;
    if (old !== 0n) return count.safe / old;
    const others = count.bunches.filter((bunch) => !before.includes(bunch));
    const rest = this.ground.controls.flatMap((_, control) => (own.has(control) ? [] : [control]));
    return this.#safe(others, new Set(rest));
  }
}

/** A yard with faults, put into a sound one whose proof is known. */
export interface HurtYard {
  readonly plugs: readonly HurtPlug[];
  readonly proof: GapProof;
}

/**
 * The same proof as `proveGap` gives with these faults, worked out anew only where they touch what a road
 * rests on.
 * @throws TooManyError when one road can be live in too many ways to try.
 */
export function hurtYard(
  { ground, plugs: sound, proof }: Sound,
  faults: readonly Fault[]
): HurtYard {
  const plugs = sound.map((plug) => new HurtPlug(plug, faults));
  const recounts = plugs.map((hurt) => new Recount(ground, hurt));
  const more = recounts.map((recount) => recount.more());
  const home = more.reduce((sum, each) => sum + each.home, 0n);
  const out = more.reduce((sum, each) => sum + each.out, 0n);
  const changed = new Set(recounts.flatMap(({ roads }) => [...roads]));
  const known = new Map(proof.breaches.map((breach) => [endKey(breach), breach]));
  const breaches = ground.atlas.ends.flatMap((each) => {
    const { end } = each;
    return (changed.has(end.road) ? plainest(ground, plugs, each) : known.get(endKey(end))) ?? [];
  });
  return {
    plugs,
    proof: { unsafe: proof.unsafe + home + out, unsafeHome: proof.unsafeHome + home, breaches }
  };
}
