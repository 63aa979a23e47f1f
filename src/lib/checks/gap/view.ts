import { file, type Atlas } from './atlas';
import { bunchOf, type Bunch } from './bunch';
import { coneOf, lostSide, type Case } from './loop';
import { isMade, joinedIn, type Moment } from './moments';
import {
  acrossPairs,
  gathered,
  momentNetwork,
  NO_PIECE,
  piecesOf,
  plainNetwork,
  type Network,
  type Pieces
} from './network';
import { valueAt } from './value-at';
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

/** The roads whose rails a conductor is. */
function railedOf({ rails }: Wiring): ReadonlyMap<number, readonly string[]> {
  const found = new Map<number, string[]>();
  for (const { name, feed, home } of rails.values()) {
    file(found, feed, name);
    file(found, home, name);
  }
  return found;
}

/** A joint with wheels across it, a pin contact that is made, or rails that touch: what a moment joins. */
interface Link {
  readonly id: string;
  readonly pairs: readonly (readonly [number, number])[];
}

interface Links {
  /** By the index of the joint. */
  readonly joints: readonly Link[];
  readonly others: readonly Link[];
}

/** Links that join something to what a road rests on. */
interface Joined extends Links {
  /** Whether too few terminals are near for the road to be live. */
  readonly isDead: boolean;
}

/** The pieces of a network that are near a road, and the terminals beside them. */
class Near {
  readonly own = new Set<number>();
  readonly ends = new Set<number>();
  readonly links = new Set<Link>();

  constructor(
    readonly pieces: Pieces,
    { feed, home }: Rails
  ) {
    this.#add(feed);
    this.#add(home);
  }

  #add(conductor: number): void {
    const piece = this.pieces.of[conductor] ?? NO_PIECE;
    if (piece === NO_PIECE) this.ends.add(conductor);
    else if (!this.own.has(piece)) {
      this.own.add(piece);
      for (const end of this.pieces.beside.get(piece) ?? []) this.ends.add(end);
    }
  }

  /** Takes those of the links that touch a piece, with the pieces at their other ends, until none is left that does. */
  gather(links: readonly Link[]): void {
    const { of } = this.pieces;
    const isNear = ({ pairs }: Link) =>
      pairs.some(([a, b]) => this.own.has(of[a] ?? NO_PIECE) || this.own.has(of[b] ?? NO_PIECE));
    for (let left = links; ;) {
      const next = left.filter(isNear);
      if (next.length === 0) return;
      for (const link of next) {
        this.links.add(link);
        for (const [a, b] of link.pairs) {
          this.#add(a);
          this.#add(b);
        }
      }
      left = left.filter((link) => !this.links.has(link));
    }
  }
}

/** What each road depends on in each kind of moment, with one wiring; each worked out once, when it is asked for. */
export class View {
  readonly plain: Network;
  readonly canShort: boolean;
  #railed: ReadonlyMap<number, readonly string[]> | undefined;
  readonly #bases = new Map<string, Base>();
  readonly #links: Links[] = [];
  readonly #networks = new Map<string, Network>();
  readonly #bunches = new Map<string, Bunch | undefined>();
  readonly #pieceKinds = new Map<string, ReadonlySet<number>>();
  #parted: Pieces | undefined;

  constructor(
    readonly wiring: Wiring,
    readonly atlas: Atlas,
    readonly controls: readonly Control[]
  ) {
    this.plain = plainNetwork(wiring);
    this.canShort = canShort(wiring);
  }

  /** Whether a kind of moment joins something to what a road rests on. */
  isOwn(road: string, kind: number): boolean {
    return this.#base(road).kinds?.has(kind) ?? true;
  }

  /** Cases of a road with each source, with locos across these joints of a kind of moment. */
  cases(road: string, kind: number, across: readonly number[]): readonly Case[] {
    if (!this.isOwn(road, kind)) return this.#base(road).cases;
    const { joints, others } = this.#joinedTo(road, kind, across);
    return this.#casesIn(road, this.#network(joints, others));
  }

  /** The cases of a road while nothing faces anything and the pin is out. */
  plainCases = (road: string): readonly Case[] => this.#base(road).cases;

  /** A road in a kind of moment, with locos wherever they may stand; undefined when no setting makes it live. */
  bunch(road: string, kind: number): Bunch | undefined {
    if (!this.isOwn(road, kind)) return this.#base(road).bunch;
    const { joints, others, isDead } = this.#joinedTo(road, kind, this.#jointsOf(kind));
    if (isDead) return undefined;
    const key = `${road} ${keyOf(joints, others)}`;
    if (this.#bunches.has(key)) return this.#bunches.get(key);
    const bunch = bunchOf(this.#casesIn(road, this.#network(joints, others)), this.controls);
    this.#bunches.set(key, bunch);
    return bunch;
  }

  #jointsOf = (kind: number): readonly number[] => this.#linksOf(kind).joints.map((_, at) => at);

  #casesIn(road: string, network: Network): readonly Case[] {
    const rails = this.#railsOf(road);
    return this.wiring.sources.map((source) => ({ network, rails, source }));
  }

  #railsOf = (road: string): Rails => this.wiring.rails.get(road) as Rails;

  #network(joints: readonly Link[], others: readonly Link[]): Network {
    const key = keyOf(joints, others);
    const known = this.#networks.get(key);
    if (known) return known;
    const pairs = (links: readonly Link[]) => links.flatMap((link) => link.pairs);
    const network = momentNetwork(this.plain, pairs(others), pairs(joints));
    this.#networks.set(key, network);
    return network;
  }

  #linksOf(kind: number): Links {
    const known = this.#links[kind];
    if (known) return known;
    const { place, pin } = this.atlas.kinds[kind] as Moment;
    const links = {
      joints: place.joints.map(({ fixed, deckRoad }) => ({
        id: `${fixed}-${deckRoad}`,
        pairs: acrossPairs(this.#railsOf(fixed), this.#railsOf(deckRoad))
      })),
      others: joinedIn(this.wiring, place, pin).map((pair) => ({ id: pair.join(), pairs: [pair] }))
    };
    this.#links[kind] = links;
    return links;
  }

  /** What a kind of moment joins to the pieces in which a road lies, or to what it joins to these. */
  #joinedTo(road: string, kind: number, across: readonly number[]): Joined {
    const links = this.#linksOf(kind);
    const joints = across.map((at) => links.joints[at] as Link);
    if (this.canShort) return { joints, others: links.others, isDead: false };
    const near = new Near(this.#pieces, this.#railsOf(road));
    near.gather([...joints, ...links.others]);
    return {
      joints: joints.filter((link) => near.links.has(link)),
      others: links.others.filter((link) => near.links.has(link)),
      isDead: this.#isApart(near)
    };
  }

  get #pieces(): Pieces {
    return (this.#parted ??= piecesOf(this.plain));
  }

  /** Whether what is near a road has too few terminals to make it live. */
  #isApart = ({ ends }: Near): boolean => this.wiring.sources.length === 1 && ends.size < 2;

  #base(road: string): Base {
    const known = this.#bases.get(road);
    if (known) return known;
    const cases = this.#casesIn(road, this.plain);
    const base = { cases, ...this.#plainly(road, cases) };
    this.#bases.set(road, base);
    return base;
  }

  #plainly(road: string, cases: readonly Case[]): Omit<Base, 'cases'> {
    if (this.canShort) return { bunch: bunchOf(cases, this.controls), kinds: undefined };
    const near = new Near(this.#pieces, this.#railsOf(road));
    if (this.#isApart(near) && !cases.some(lostSide)) {
      return { bunch: undefined, kinds: this.#kindsOf(near) };
    }
    const reach = new Set(cases.flatMap((each) => [...coneOf(each).reach]));
    return { bunch: bunchOf(cases, this.controls), kinds: this.#kindsAt(reach) };
  }

  /** Kinds of moment that join something to these pieces. */
  #kindsOf({ own }: Near): ReadonlySet<number> {
    const key = [...own].sort((a, b) => a - b).join();
    const reach = () =>
      new Set(this.#pieces.of.flatMap((piece, conductor) => (own.has(piece) ? [conductor] : [])));
    return valueAt(this.#pieceKinds, key, () => this.#kindsAt(reach()));
  }

  /** Kinds of moment that join something to these conductors. */
  #kindsAt(reach: ReadonlySet<number>): ReadonlySet<number> {
    const { kinds, facingIn } = this.atlas;
    const railed = (this.#railed ??= railedOf(this.wiring));
    const roads = new Set([...reach].flatMap((conductor) => railed.get(conductor) ?? []));
    const found = new Set([...roads].flatMap((road) => facingIn.get(road) ?? []));
    for (const contact of this.wiring.pinned) {
      if (!reach.has(contact.a) && !reach.has(contact.b)) continue;
      kinds.forEach(({ place, pin }, kind) => {
        if (isMade(contact, place, pin)) found.add(kind);
      });
    }
    return found;
  }
}

const keyOf = (joints: readonly Link[], others: readonly Link[]): string =>
  `${joints.map(({ id }) => id).join()} ${others.map(({ id }) => id).join(';')}`;
