import {
  admit,
  apply,
  fit,
  holes,
  placed,
  roadsOf,
  SceneSchema,
  toggleRoads,
  type Fault,
  type Hole,
  type Placed,
  type Scene,
  type Yard
} from '../../yard';

/** A contact that hands set: made in one of its switch's positions. */
export interface Switched {
  readonly a: number;
  readonly b: number;
  /** Index of its switch among the yard's switches. */
  readonly by: number;
  /** The position, 0 or 1, in which it is made. */
  readonly made: number;
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
  readonly feed: number;
  readonly home: number;
  readonly rails: ReadonlyMap<string, Rails>;
  readonly switched: readonly Switched[];
  readonly pinned: readonly Pinned[];
  /** Roads whose feed rails touch while they face each other. */
  readonly touching: readonly (readonly [string, string])[];
}

/** A yard with the plug in or out and some faults in it. */
export interface Built {
  readonly yard: Yard;
  readonly plug: Scene['plug'];
  readonly faults: readonly Fault[];
  readonly switches: readonly string[];
  /** The yard at rest, its deck where nothing faces and no hole is under the pin. */
  readonly rest: Scene;
}

/** The switches of a yard, by the names a scene calls them; each has two positions. */
export const switchesOf = (yard: Yard): readonly string[] => toggleRoads(yard);

/** The name of the switch that works a contact. */
const switchOf = (contact: string): string => contact.slice('toggle '.length);
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

/** Parts with every switch off and with every switch on, side by side. */
function bothWays(built: Built) {
  const off = away(built);
  const on: Scene = {
    ...off,
    switches: Object.fromEntries(built.switches.map((name) => [name, true]))
  };
  const onParts = partsOf(built.yard, on);
  return partsOf(built.yard, off).map((part, index) => ({
    part,
    closedOn: (onParts[index] as Placed).closed
  }));
}

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

/** Works the wiring out from the yard's own runs. */
export function wiringOf(built: Built): Wiring {
  const parts = bothWays(built);
  const conductors = new Conductors();
  for (const { part, closedOn } of parts) {
    conductors.number(part.from);
    conductors.number(part.to);
    if (part.kind !== 'pin contact' && part.closed && closedOn) {
      conductors.join(part.from, part.to);
    }
  }
  const find = (node: string) => conductors.find(node);
  const between = ({ from, to }: Placed) => ({ a: find(from), b: find(to) });
  const indexes = new Map(built.switches.map((name, index) => [name, index]));
  const rails = roadsOf(built.yard).map(({ name }): [string, Rails] => [
    name,
    { name, feed: find(`feed rail ${name}`), home: find(`return rail ${name}`) }
  ]);
  return {
    feed: find('feed'),
    home: find('return'),
    rails: new Map(rails),
    switched: parts
      .filter(({ part, closedOn }) => part.kind !== 'pin contact' && part.closed !== closedOn)
      .map(({ part, closedOn }) => ({
        ...between(part),
        by: indexes.get(switchOf(part.id)) as number,
        made: closedOn ? 1 : 0
      })),
    pinned: parts
      .filter(({ part }) => part.kind === 'pin contact')
      .map(({ part }) => ({
        ...between(part),
        road: roadOfPin(part.id),
        when: whenMade(built, part)
      })),
    touching: built.faults.flatMap((fault) => ('touching' in fault ? [fault.touching] : [])),
    conductors: conductors.size
  };
}
