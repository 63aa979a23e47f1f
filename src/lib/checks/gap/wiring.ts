import { apply, fit, placed, roadsOf, type Placed, type Run, type Scene, type Yard } from '../../yard';

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
  readonly id: string;
  readonly road: string;
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
}

/** The switches of a yard, by the names a scene calls them; each has two positions. */
export const switchesOf = (yard: Yard): readonly string[] => {
  const runs = apply(yard, still(yard));
  return runs
    .flatMap(({ parts }) => parts)
    .filter(({ kind }) => kind === 'toggle')
    .map(({ id }) => switchOf(id));
};

/** The name of the switch that works a contact. */
const switchOf = (contact: string): string => contact.slice('toggle '.length);
const roadOfPin = (contact: string): string => contact.slice('pin contact '.length);

/** The yard at rest: no loco, the pin out, every switch off. */
export const still = (yard: Yard): Scene =>
  fit('scene', yard, {
    version: 1,
    controller: 0,
    switches: {},
    deck: 0,
    pin: 'out',
    plug: 'in',
    locos: {},
    edits: []
  });

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

/** Parts with every switch off and with every switch on, side by side. */
function bothWays(yard: Yard, plug: Scene['plug'], switches: readonly string[]) {
  const off: Scene = { ...still(yard), plug };
  const on: Scene = { ...off, switches: Object.fromEntries(switches.map((name) => [name, true])) };
  const partsOf = (runs: readonly Run[]) => runs.flatMap(placed);
  const onParts = partsOf(apply(yard, on));
  return partsOf(apply(yard, off)).map((part, index) => ({
    part,
    closedOn: (onParts[index] as Placed).closed
  }));
}

/** Works the wiring out from the yard's own runs. */
export function wiringOf(yard: Yard, plug: Scene['plug'], switches: readonly string[]): Wiring {
  const parts = bothWays(yard, plug, switches);
  const conductors = new Conductors();
  for (const { part, closedOn } of parts) {
    if (part.kind !== 'pin contact' && part.closed && closedOn) {
      conductors.join(part.from, part.to);
    }
  }
  const find = (node: string) => conductors.find(node);
  const between = ({ from, to }: Placed) => ({ a: find(from), b: find(to) });
  const indexes = new Map(switches.map((name, index) => [name, index]));
  const rails = roadsOf(yard).map(({ name }): [string, Rails] => [
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
      .map(({ part }) => ({ ...between(part), id: part.id, road: roadOfPin(part.id) })),
    conductors: conductors.size
  };
}
