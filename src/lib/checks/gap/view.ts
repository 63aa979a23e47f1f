import { file, type Atlas } from './atlas';
import { bunchOf, type Bunch } from './bunch';
import { clusterOf, coneOf } from './count';
import type { Case } from './loop';
import { isMade, networkOf } from './moments';
import { gathered, plainNetwork, type Network } from './network';
import type { Joint } from './places';
import type { Control } from './settings';
import type { Rails, Wiring } from './wiring';

/** A road with a wiring in the plain network, and the kinds of moment that join something to what it rests on. */
interface Base {
  readonly cases: readonly Case[];
  readonly bunch: Bunch | undefined;
  /** Undefined: every kind may. */
  readonly kinds: ReadonlySet<number> | undefined;
}

/** Whether pin contacts and touching rails could ever join the two terminals of a source. */
function canShort({ sources, pinned, touching, rails }: Wiring): boolean {
  if (sources.some(([a, b]) => a === b)) return true;
  const feed = (road: string) => rails.get(road)?.feed ?? -1;
  const pairs = [
    ...pinned.map(({ a, b }) => [a, b] as const),
    ...touching.map(([one, other]) => [feed(one), feed(other)] as const)
  ];
  const ends = new Set(sources.flat());
  if (new Set(pairs.flat().filter((each) => ends.has(each))).size < 2) return false;
  const groups = gathered(pairs);
  return sources.some(([a, b]) => groups.some((group) => group.has(a) && group.has(b)));
}

/** What each road depends on in each kind of moment, with one wiring; each worked out once, when it is asked for. */
export class View {
  readonly plain: Network;
  readonly canShort: boolean;
  readonly #railed = new Map<number, string[]>();
  readonly #bases = new Map<string, Base>();
  readonly #bunches = new Map<string, Bunch | undefined>();
  readonly #networks = new Map<string, Network>();

  constructor(
    readonly wiring: Wiring,
    readonly atlas: Atlas,
    readonly controls: readonly Control[]
  ) {
    this.plain = plainNetwork(wiring);
    this.canShort = canShort(wiring);
    for (const { name, feed, home } of wiring.rails.values()) {
      file(this.#railed, feed, name);
      file(this.#railed, home, name);
    }
  }

  /** Whether a kind of moment joins something to what a road rests on. */
  isOwn(road: string, kind: number): boolean {
    return this.#base(road).kinds?.has(kind) ?? true;
  }

  /** Cases of a road with each source, with locos across these joints. */
  cases(road: string, kind: number, across: readonly Joint[]): readonly Case[] {
    if (!this.isOwn(road, kind)) return this.#base(road).cases;
    return this.#casesIn(road, this.#network(kind, across));
  }

  /** The cases of a road while nothing faces anything and the pin is out. */
  plainCases = (road: string): readonly Case[] => this.#base(road).cases;

  /** A road in a kind of moment, with locos wherever they may stand; undefined when no setting makes it live. */
  bunch(road: string, kind: number): Bunch | undefined {
    if (!this.isOwn(road, kind)) return this.#base(road).bunch;
    const key = `${road} ${kind}`;
    if (this.#bunches.has(key)) return this.#bunches.get(key);
    const { joints } = (this.atlas.kinds[kind] as Atlas['kinds'][number]).place;
    const bunch = this.#count(this.cases(road, kind, joints));
    this.#bunches.set(key, bunch);
    return bunch;
  }

  #count(cases: readonly Case[]): Bunch | undefined {
    const cluster = clusterOf(cases);
    return cluster && bunchOf(cluster, this.controls);
  }

  #casesIn(road: string, network: Network): readonly Case[] {
    const rails = this.wiring.rails.get(road) as Rails;
    return this.wiring.sources.map((source) => ({ network, rails, source }));
  }

  #network(kind: number, across: readonly Joint[]): Network {
    const key = `${kind} ${across.map(({ fixed, deckRoad }) => `${fixed}-${deckRoad}`).join()}`;
    const known = this.#networks.get(key);
    if (known) return known;
    const network = networkOf(this.plain, this.atlas.kinds[kind] as Atlas['kinds'][number], across);
    this.#networks.set(key, network);
    return network;
  }

  #base(road: string): Base {
    const known = this.#bases.get(road);
    if (known) return known;
    const cases = this.#casesIn(road, this.plain);
    const base = { cases, bunch: this.#count(cases), kinds: this.#kinds(cases) };
    this.#bases.set(road, base);
    return base;
  }

  #kinds(cases: readonly Case[]): ReadonlySet<number> | undefined {
    if (this.canShort) return undefined;
    const reach = new Set(cases.flatMap((each) => [...coneOf(each).reach]));
    const { kinds, facingIn } = this.atlas;
    const found = new Set<number>();
    for (const conductor of reach) {
      for (const road of this.#railed.get(conductor) ?? []) {
        for (const kind of facingIn.get(road) ?? []) found.add(kind);
      }
    }
    for (const contact of this.wiring.pinned) {
      if (!reach.has(contact.a) && !reach.has(contact.b)) continue;
      kinds.forEach(({ place, pin }, kind) => {
        if (isMade(contact, place, pin)) found.add(kind);
      });
    }
    return found;
  }
}
