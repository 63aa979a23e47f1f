import {
  admit,
  apply,
  fit,
  holes,
  placed,
  roadNamed,
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
  /** The whole road whose holes it belongs to. */
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
  /** The conductor to which a node belongs, by the node's number. */
  readonly find: (node: number) => number;
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

/** The yard at rest: no loco, the pin out, every switch off, the deck where it is told. */
export const restOf = (yard: Yard, deckMm: number): Scene =>
  fit('scene', yard, admit('scene', SceneSchema, { pin: 'out', deck: deckMm }));

/** Numbers for the names of nodes. */
export class Nodes {
  readonly #numbers = new Map<string, number>();

  number(node: string): number {
    const known = this.#numbers.get(node);
    if (known !== undefined) return known;
    this.#numbers.set(node, this.#numbers.size);
    return this.#numbers.size - 1;
  }
  get size(): number {
    return this.#numbers.size;
  }
}

/** The nodes that a yard has whatever its parts: terminals, and the rails of each road. */
export interface Posts {
  readonly nodes: Nodes;
  readonly terminals: readonly number[];
  readonly rails: readonly Rails[];
  /** The whole road to which a road or section belongs. */
  readonly whole: ReadonlyMap<string, string>;
}

export function postsOf(yard: Yard): Posts {
  const nodes = new Nodes();
  const all = roadsOf(yard);
  return {
    nodes,
    terminals: ['feed', ...(yard.second ? ['feed 2'] : []), 'return'].map((name) =>
      nodes.number(name)
    ),
    whole: new Map(all.map(({ name, whole }) => [name, whole])),
    rails: all.map(({ name }) => ({
      name,
      feed: nodes.number(`feed rail ${name}`),
      home: nodes.number(`return rail ${name}`)
    }))
  };
}

/** A part with the numbers of its nodes, and what it is to the proof. */
export interface Laid {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** Joined or open whatever hands do, set by hands or by the pin, or a lamp or resistor. */
  readonly role: 'joined' | 'open' | 'switched' | 'pinned' | 'load';
  /** Whether it is closed, with every control at its k-th stand. */
  readonly closed: readonly boolean[];
  /** Index of its control, where hands set it. */
  readonly by: number;
  readonly pin?: Pick<Pinned, 'road' | 'when'>;
}

const isLoad = ({ kind }: Placed): boolean =>
  kind === 'resistor' || kind === 'lamp' || kind === 'lamp guard';

function roleOf(part: Placed, closed: readonly boolean[]): Laid['role'] {
  if (!closed.includes(true)) return 'open';
  if (isLoad(part)) return 'load';
  return closed.includes(false) ? 'switched' : 'joined';
}

function pinRole({ elsewhere, under, home }: Pinned['when']): Laid['role'] {
  if (elsewhere === under && under === home) return home ? 'joined' : 'open';
  return 'pinned';
}

/** When a pin contact is made that no fault names: with the pin home alone. */
const soundly = (closed: boolean): Pinned['when'] => ({
  elsewhere: closed,
  under: closed,
  home: true
});

/** The road or section in whose feed a pin contact stands. */
const roadOfPin = (contact: string): string => contact.slice('pin contact '.length);

/** Parts as hands leave them, from the same parts at the first stand of every control, at the second, and so on. */
export function laid(
  controls: readonly Control[],
  { nodes, whole }: Posts,
  stands: readonly (readonly Placed[])[],
  faulty: (part: Placed) => Pinned['when'] | undefined
): readonly Laid[] {
  return (stands[0] as readonly Placed[]).map((part, index) => {
    const { id, from, to } = part;
    const closed = stands.map((parts) => (parts[index] as Placed).closed);
    const when = part.kind === 'pin contact' ? (faulty(part) ?? soundly(part.closed)) : undefined;
    const role = when ? pinRole(when) : roleOf(part, closed);
    return {
      id,
      from: nodes.number(from),
      to: nodes.number(to),
      role,
      closed,
      by: role === 'switched' ? controlOf(controls, id) : -1,
      ...(when && role === 'pinned'
        ? { pin: { road: whole.get(roadOfPin(id)) as string, when } }
        : {})
    };
  });
}

/** Which numbers are one conductor. */
class Conductors {
  readonly #above: Int32Array;
  constructor(count: number) {
    this.#above = new Int32Array(count);
    for (let node = 0; node < count; node++) this.#above[node] = node;
  }
  find(node: number): number {
    const above = this.#above;
    let at = node;
    for (let next = above[at] as number; next !== at; next = above[at] as number) {
      above[at] = above[next] as number;
      at = next;
    }
    return at;
  }
  join(a: number, b: number): void {
    this.#above[this.find(a)] = this.find(b);
  }
}

/** Every two of the terminals. */
const pairsOf = (terminals: readonly number[]): readonly (readonly [number, number])[] =>
  terminals.flatMap((a, index) => terminals.slice(index + 1).map((b) => [a, b] as const));

/** Puts a wiring together from its parts, by their runs. */
export function wiringFrom(
  { nodes, terminals, rails }: Posts,
  parts: readonly (readonly Laid[])[],
  faults: readonly Fault[]
): Wiring {
  const conductors = new Conductors(nodes.size);
  for (const run of parts) {
    for (const { role, from, to } of run) if (role === 'joined') conductors.join(from, to);
  }
  const find = (node: number) => conductors.find(node);
  const switched: Switched[] = [];
  const pinned: Pinned[] = [];
  const loads: (readonly [number, number])[] = [];
  const lay = ({ role, from, to, closed, by, pin }: Laid) => {
    const [a, b] = [find(from), find(to)];
    if (role === 'load') loads.push([a, b]);
    else if (pin) pinned.push({ a, b, ...pin });
    else switched.push({ a, b, by, made: closed });
  };
  for (const run of parts) {
    for (const part of run) if (part.role !== 'joined' && part.role !== 'open') lay(part);
  }
  return {
    conductors: nodes.size,
    find,
    sources: pairsOf(terminals.map(find)),
    rails: new Map(
      rails.map(({ name, feed, home }) => [name, { name, feed: find(feed), home: find(home) }])
    ),
    switched,
    pinned,
    loads,
    touching: faults.flatMap((fault) => ('touching' in fault ? [fault.touching] : []))
  };
}

/** The scenes with every control at its first stand, at its second, and so on. */
export function standScenes({ rest, plug, controls }: Omit<Built, 'faults'>): readonly Scene[] {
  const stands = Math.max(1, ...controls.map((control) => control.stands.length));
  return Array.from({ length: stands }, (_, stand) => ({
    ...rest,
    plug,
    ...sceneHands(
      handsOf(
        controls,
        controls.map(() => stand)
      )
    )
  }));
}

const partsOf = (yard: Yard, scene: Scene): readonly Placed[] => apply(yard, scene).flatMap(placed);

/** Whether one of these faults names this contact. */
export const isNamed = (faults: readonly Fault[], id: string): boolean =>
  faults.some((fault) => Object.values(fault).includes(id));

/** A hole of a pin contact's road. */
export function holeOfPin(yard: Yard, contact: string): Hole {
  const { whole } = roadNamed(yard, roadOfPin(contact));
  return holes(yard).find(({ fixed }) => fixed === whole) as Hole;
}

/** When a pin contact is made that a fault names. */
function whenMade(built: Built, { id, closed }: Placed): Pinned['when'] | undefined {
  const { yard, rest, plug, faults } = built;
  if (!isNamed(faults, id)) return undefined;
  const { deckMm } = holeOfPin(yard, id);
  const madeAt = (pin: Scene['pin']) =>
    partsOf(yard, { ...rest, plug, faults: [...faults], deck: deckMm, pin }).some(
      (part) => part.id === id && part.closed
    );
  return { elsewhere: closed, under: madeAt('out'), home: madeAt('home') };
}

/** Works the wiring out from the yard's own runs. */
export function wiringOf(built: Built): Wiring {
  const posts = postsOf(built.yard);
  const stands = standScenes(built).map((scene) =>
    partsOf(built.yard, { ...scene, faults: [...built.faults] })
  );
  const parts = laid(built.controls, posts, stands, (part) => whenMade(built, part));
  return wiringFrom(posts, [parts], built.faults);
}
