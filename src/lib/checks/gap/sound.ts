import type { Fault } from '../../yard';
import { file, type Atlas } from './atlas';
import { Joiner, type Bunch } from './bunch';
import { Marks, touchedBy } from './marks';
import { plainest } from './plainest';
import type { GapProof, Ground } from './proof';
import { settingsCount } from './count';
import { View } from './view';
import { hurtOf, wholeOf, type Whole } from './whole';

/** A road in every moment, or in those of one kind. */
export interface Spot {
  readonly road: string;
  /** Undefined: in every moment. */
  readonly kind: number | undefined;
}

/** The roads with an open end that are live with some setting of a moment, gathered where they share controls. */
interface Count {
  readonly bunches: readonly Bunch[];
  readonly safe: bigint;
}

/** What is known of a yard without faults, with the plug in or out. */
export interface SoundPlug {
  readonly whole: Whole;
  readonly view: View;
  readonly counts: readonly Count[];
  /** What rests on each mark of the wiring: roads where they have an open end. */
  readonly spots: ReadonlyMap<number, readonly Spot[]>;
  /** The same for every road with the pin home. */
  readonly pinnedSpots: ReadonlyMap<number, readonly Spot[]>;
}

/** The proof of a yard without faults, and what each part of it rests on. */
export interface Sound {
  readonly ground: Ground;
  readonly proof: GapProof;
  readonly plugs: readonly SoundPlug[];
}

/** How many settings of all controls make no road of these bunches live. */
function safeOf(bunches: readonly Bunch[], { controls }: Ground): bigint {
  const used = new Set(bunches.flatMap((bunch) => bunch.controls));
  const free = settingsCount(controls.filter((_, index) => !used.has(index)));
  return bunches.reduce((product, { safe }) => product * safe, free);
}

/** What rests on each mark, for these roads in some kinds of moment; `all` has each road's plain network as well. */
function spotsOf(
  marks: Marks,
  view: View,
  kindsOf: (road: string) => readonly number[]
): SoundPlug['spots'] {
  const found = new Map<number, Spot[]>();
  const note = (spot: Spot, on: ReadonlySet<number>) => {
    for (const mark of on) file(found, mark, spot);
  };
  for (const road of view.wiring.rails.keys()) {
    note({ road, kind: undefined }, marks.plain(road));
    for (const kind of kindsOf(road)) {
      if (view.isOwn(road, kind)) note({ road, kind }, marks.inKind(road, kind));
    }
  }
  return found;
}

/** Kinds of moment in which a road has an open end. */
const openKinds =
  ({ openAt, kindOf }: Atlas) =>
  (road: string): readonly number[] => [
    ...new Set((openAt.get(road) ?? []).map((index) => kindOf[index] as number))
  ];

/** Kinds of moment with the pin home. */
const pinnedKinds = ({ kinds }: Atlas): readonly number[] =>
  kinds.flatMap(({ pin }, kind) => (pin === 'home' ? [kind] : []));

function soundPlug(ground: Ground, plug: 'in' | 'out'): SoundPlug {
  const { atlas, controls } = ground;
  const whole = wholeOf(ground, plug);
  const view = new View(whole.wiring, atlas, controls);
  const joiner = new Joiner(controls);
  const counts = atlas.open.map((roads, index) => {
    const all = roads.flatMap((road) => view.bunch(road, atlas.kindOf[index] as number) ?? []);
    const bunches = joiner.joined(all);
    return { bunches, safe: safeOf(bunches, ground) };
  });
  const marks = new Marks(whole, view);
  const pinned = pinnedKinds(atlas);
  return {
    whole,
    view,
    counts,
    spots: spotsOf(marks, view, openKinds(atlas)),
    pinnedSpots: spotsOf(marks, view, () => (plug === 'in' ? pinned : []))
  };
}

/** Proves a yard without faults, and keeps what each part of the proof rests on. */
export function soundOf(ground: Ground): Sound {
  const plugs = ground.plugs.map((plug) => soundPlug(ground, plug));
  const all = settingsCount(ground.controls);
  const sum = (holds: (index: number) => boolean) =>
    plugs
      .flatMap(({ counts }) => counts.filter((_, index) => holds(index)))
      .reduce((total, { safe }) => total + all - safe, 0n);
  const lookups = plugs.map(({ view }) => ({ viewFor: () => view }));
  const breaches = ground.atlas.ends.flatMap((end) => plainest(ground, lookups, end) ?? []);
  return {
    ground,
    plugs,
    proof: {
      unsafe: sum(() => true),
      unsafeHome: sum((index) => ground.moments[index]?.pin === 'home'),
      breaches
    }
  };
}

/** Roads that may differ from those of a sound yard. */
class Differing {
  readonly #roads = new Set<string>();
  readonly #kinds = new Map<string, Set<number>>();

  constructor(spots: Iterable<Spot>) {
    for (const { road, kind } of spots) {
      if (kind === undefined) this.#roads.add(road);
      else this.#kinds.set(road, (this.#kinds.get(road) ?? new Set()).add(kind));
    }
  }
  get roads(): readonly string[] {
    return [...new Set([...this.#roads, ...this.#kinds.keys()])];
  }
  has(road: string, kind: number): boolean {
    return this.#roads.has(road) || (this.#kinds.get(road)?.has(kind) ?? false);
  }
}

/** One plug state of a yard with faults: its roads are as in the sound yard but for some. */
export class HurtPlug {
  readonly view: View;
  /** Where a road with an open end may differ. */
  readonly open: Differing;
  readonly #touched: ReadonlySet<number> | undefined;

  constructor(
    readonly sound: SoundPlug,
    faults: readonly Fault[]
  ) {
    const { whole, view } = sound;
    const hurt = hurtOf(whole, faults);
    const isSame = hurt.wiring === whole.wiring;
    this.view = isSame ? view : new View(hurt.wiring, view.atlas, view.controls);
    const isAll = !isSame && (view.canShort || this.view.canShort);
    this.#touched = isAll ? undefined : isSame ? new Set() : touchedBy(whole, hurt);
    this.open = this.#differing(sound.spots);
  }

  /** Where a road may differ with the pin home. */
  get pinned(): Differing {
    return this.#differing(this.sound.pinnedSpots);
  }

  #differing(spots: SoundPlug['spots']): Differing {
    const roads = [...this.view.wiring.rails.keys()];
    return new Differing(
      this.#touched
        ? [...this.#touched].flatMap((mark) => spots.get(mark) ?? [])
        : roads.map((road) => ({ road, kind: undefined }))
    );
  }

  /** The view to ask about a road with an open end in a kind of moment. */
  viewFor(road: string, kind: number): View {
    return this.open.has(road, kind) ? this.view : this.sound.view;
  }
}
