import type { Fault } from '../../yard';
import { file } from './atlas';
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
  readonly joiner: Joiner;
  readonly counts: readonly Count[];
  /** What rests on each mark of the wiring. */
  readonly spots: ReadonlyMap<number, readonly Spot[]>;
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

function spotsOf(whole: Whole, view: View): SoundPlug['spots'] {
  const marks = new Marks(whole, view);
  const { openAt, kindOf, kinds } = view.atlas;
  const found = new Map<number, Spot[]>();
  const note = (spot: Spot, on: ReadonlySet<number>) => {
    for (const mark of on) file(found, mark, spot);
  };
  for (const road of whole.wiring.rails.keys()) {
    note({ road, kind: undefined }, marks.plain(road));
    const open = new Set((openAt.get(road) ?? []).map((index) => kindOf[index] as number));
    kinds.forEach(({ place, pin }, kind) => {
      if (!view.isOwn(road, kind) || !(open.has(kind) || pin === 'home')) return;
      note({ road, kind }, marks.inKind(road, kind, view.cases(road, kind, place.joints)));
    });
  }
  return found;
}

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
  return { whole, view, joiner, counts, spots: spotsOf(whole, view) };
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

/** One plug state of a yard with faults: its roads are as in the sound yard but for some. */
export class HurtPlug {
  readonly view: View;
  /** Roads that may differ in every moment, and in moments of some kinds. */
  readonly #roads: Set<string>;
  readonly #kinds = new Map<string, Set<number>>();

  constructor(
    readonly sound: SoundPlug,
    faults: readonly Fault[]
  ) {
    const { whole, view, spots } = sound;
    const { atlas, controls } = view;
    const hurt = hurtOf(whole, faults);
    const same = hurt.wiring === whole.wiring;
    this.view = same ? view : new View(hurt.wiring, atlas, controls);
    const all = !same && (view.canShort || this.view.canShort);
    this.#roads = new Set(all ? whole.wiring.rails.keys() : []);
    if (same || all) return;
    for (const mark of touchedBy(whole, hurt)) {
      for (const { road, kind } of spots.get(mark) ?? []) {
        if (kind === undefined) this.#roads.add(road);
        else this.#kinds.set(road, (this.#kinds.get(road) ?? new Set()).add(kind));
      }
    }
  }

  /** Roads that may differ somewhere. */
  get roads(): ReadonlySet<string> {
    return new Set([...this.#roads, ...this.#kinds.keys()]);
  }

  differs(road: string, kind: number): boolean {
    return this.#roads.has(road) || (this.#kinds.get(road)?.has(kind) ?? false);
  }

  /** The view to ask about a road in a kind of moment. */
  viewFor(road: string, kind: number): View {
    return this.differs(road, kind) ? this.view : this.sound.view;
  }
}
