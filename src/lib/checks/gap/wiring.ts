import {
  admit,
  apply,
  fit,
  holes,
  placed,
  roadsOf,
  SceneSchema,
  type Fault,
  type Hole,
  type Placed,
  type Scene,
  type Yard
} from '../../yard';
import { controlOf, handsOf, sceneHands, type Control } from './settings';

/** A contact that hands set: made in one of its switch's positions. */
export interface Switched {
  readonly a: number;
  readonly b: number;
  /** Index of its control among the yard's controls. */
  readonly by: number;
  /** Whether it is made, for each stand of the control. */
  readonly made: readonly boolean[];
}

/** A contact that pin and deck set. */
export interface Pinned {
  readonly a: number;
  readonly b: number;
  readonly road: string;
  /** Whether it is made with the deck elsewhere, over its hole with the pin out, and with the pin home in it. */
  readonly when: { readonly elsewhere: boolean; readonly under: boolean; readonly home: boolean };
}

/** The rails of one road, as numbers of conductors. */
export interface Rails {
  readonly name: string;
  readonly feed: number;
  readonly home: number;
}

/**
 * A yard's wiring with the plug in or out: what is joined whatever hands do is one conductor with one
 * number; the contacts that hands, pin and deck set stand between two of them.
 */
export interface Wiring {
  readonly conductors: number;
  /** What it was worked out from: each part, and whether it is closed with every control at its k-th stand. */
  readonly parts: readonly Seen[];
  /** The conductor to which a terminal belongs. */
  readonly find: (node: string) => number;
  /** Pairs of terminals between which a controller, or two in series, can drive a current. */
  readonly sources: readonly (readonly [number, number])[];
  readonly rails: ReadonlyMap<string, Rails>;
  readonly switched: readonly Switched[];
  readonly pinned: readonly Pinned[];
  /** Lamps and resistors: they pass current as a loco does. */
  readonly loads: readonly (readonly [number, number])[];
  /** Roads whose feed rails touch while they face each other. */
  readonly touching: readonly (readonly [string, string])[];
}

/** A yard with the plug in or out and some faults in it. */
export interface Built {
  readonly yard: Yard;
  readonly plug: Scene['plug'];
  readonly faults: readonly Fault[];
  readonly controls: readonly Control[];
  /** The yard at rest, its deck where nothing faces and no hole is under the pin. */
  readonly rest: Scene;
}

const roadOfPin = (contact: string): string => contact.slice('pin contact '.length);

/** The yard at rest: no loco, the pin out, every switch off, the deck where it is told. */
export const restOf = (yard: Yard, deckMm: number): Scene =>
  fit('scene', yard, admit('scene', SceneSchema, { pin: 'out', deck: deckMm }));

/** Names for numbers, and which numbers are one conductor. */
class Conductors {
  readonly #numbers = new Map<string, number>();
  readonly #above: number[] = [];

  number(node: string): number {
    const known = this.#numbers.get(node);
    if (known !== undefined) return known;
    const fresh = this.#above.push(this.#above.length) - 1;
    this.#numbers.set(node, fresh);
    return fresh;
  }
  /** The number that stands for the whole conductor. */
  find(node: string): number {
    let at = this.number(node);
    for (let above = this.#above[at] as number; above !== at; above = this.#above[at] as number) {
      this.#above[at] = this.#above[above] as number;
      at = above;
    }
    return at;
  }
  join(a: string, b: string): void {
    this.#above[this.find(a)] = this.find(b);
  }
  get size(): number {
    return this.#above.length;
  }
}

const partsOf = (yard: Yard, scene: Scene): readonly Placed[] => apply(yard, scene).flatMap(placed);

const away = ({ rest, plug, faults }: Built): Scene => ({ ...rest, plug, faults: [...faults] });

/** A part as hands leave it. */
export interface Seen {
  readonly part: Placed;
  /** Whether it is closed, with every control at its k-th stand. */
  readonly closed: readonly boolean[];
}

/** Parts with every control at its first stand, at its second, and so on. */
function seen(built: Built): readonly Seen[] {
  const { yard, controls } = built;
  const rest = away(built);
  const stands = Math.max(1, ...controls.map((control) => control.stands.length));
  const at = Array.from({ length: stands }, (_, stand) => {
    const hands = handsOf(
      controls,
      controls.map(() => stand)
    );
    return partsOf(yard, { ...rest, ...sceneHands(hands) });
  });
  return (at[0] as readonly Placed[]).map((part, index) => ({
    part,
    closed: at.map((parts) => (parts[index] as Placed).closed)
  }));
}

const isLoad = ({ kind }: Placed): boolean =>
  kind === 'resistor' || kind === 'lamp' || kind === 'lamp guard';

/** When a pin contact is made; one that no fault names is made with the pin home alone. */
function whenMade(built: Built, { id, closed }: Placed): Pinned['when'] {
  const named = built.faults.some((fault) => Object.values(fault).includes(id));
  if (!named) return { elsewhere: closed, under: closed, home: true };
  const hole = holes(built.yard).find(({ fixed }) => fixed === roadOfPin(id)) as Hole;
  const madeAt = (pin: Scene['pin']) =>
    partsOf(built.yard, { ...away(built), deck: hole.deckMm, pin }).some(
      (part) => part.id === id && part.closed
    );
  return { elsewhere: closed, under: madeAt('out'), home: madeAt('home') };
}

/** Every two of the terminals. */
const pairsOf = (terminals: readonly number[]): readonly (readonly [number, number])[] =>
  terminals.flatMap((a, index) => terminals.slice(index + 1).map((b) => [a, b] as const));

/** Whether a part joins its ends whatever hands, pin and deck do. */
export const isAlways = ({ part, closed }: Seen): boolean =>
  closed.every((each) => each) && part.kind !== 'pin contact' && !isLoad(part);

/** Makes one conductor of what is joined whatever hands, pin and deck do. */
function gather(parts: readonly Seen[]): Conductors {
  const conductors = new Conductors();
  for (const { part, closed } of parts) {
    conductors.number(part.from);
    conductors.number(part.to);
    if (isAlways({ part, closed })) conductors.join(part.from, part.to);
  }
  return conductors;
}

/** Works the wiring out from the yard's own runs. */
export function wiringOf(built: Built): Wiring {
  const { yard, controls, faults } = built;
  const parts = seen(built);
  const conductors = gather(parts);
  const find = (node: string) => conductors.find(node);
  const between = ({ from, to }: Placed) => ({ a: find(from), b: find(to) });
  const rails = roadsOf(yard).map(({ name }): [string, Rails] => [
    name,
    { name, feed: find(`feed rail ${name}`), home: find(`return rail ${name}`) }
  ]);
  return {
    parts,
    find,
    sources: pairsOf(['feed', ...(yard.second ? ['feed 2'] : []), 'return'].map(find)),
    rails: new Map(rails),
    switched: parts
      .filter(({ part, closed }) => part.kind !== 'pin contact' && new Set(closed).size > 1)
      .map(({ part, closed }) => ({
        ...between(part),
        by: controlOf(controls, part.id),
        made: closed
      })),
    pinned: parts
      .filter(({ part }) => part.kind === 'pin contact')
      .map(({ part }) => ({
        ...between(part),
        road: roadOfPin(part.id),
        when: whenMade(built, part)
      })),
    loads: parts
      .filter(({ part, closed }) => isLoad(part) && closed[0])
      .map(({ part }) => [find(part.from), find(part.to)] as const),
    touching: faults.flatMap((fault) => ('touching' in fault ? [fault.touching] : [])),
    conductors: conductors.size
  };
}
