import { file } from './atlas';
import { coneOf, type Case } from './loop';
import { isMade } from './moments';
import type { View } from './view';
import type { Laid, Posts, Wiring } from './wiring';
import type { Hurt, Whole } from './whole';

/**
 * Where in the wiring of a sound yard each road rests: the conductors that it reaches, and the nodes at
 * which it comes to a terminal. A fault that touches none of them changes nothing for the road.
 */
export class Marks {
  readonly #bounds = new Map<number, number[]>();
  readonly #ends: ReadonlySet<number>;

  constructor(
    readonly whole: Whole,
    readonly view: View
  ) {
    const { wiring, posts, parts } = whole;
    this.#ends = new Set(wiring.sources.flat());
    const bound = (from: number, to: number) => {
      if (this.#ends.has(wiring.find(to))) file(this.#bounds, wiring.find(from), to);
    };
    const loads = posts.rails.map(({ feed, home }) => ({ from: feed, to: home }));
    const between = ({ role }: Laid) => role !== 'joined' && role !== 'open';
    for (const { from, to } of [...loads, ...parts.flat().filter(between)]) {
      bound(from, to);
      bound(to, from);
    }
  }

  /** What a road's cases rest on in the plain network. */
  plain(road: string): ReadonlySet<number> {
    return this.#of(this.view.plainCases(road), this.#railsOf(road));
  }

  /** What a road's cases rest on in a kind of moment that joins something to it. */
  inKind(road: string, kind: number): ReadonlySet<number> {
    const { place, pin } = this.view.atlas.kinds[kind] as View['atlas']['kinds'][number];
    const roads = place.joints.flatMap(({ fixed, deckRoad }) => [fixed, deckRoad]);
    const pins = this.whole.parts
      .flat()
      .filter(({ pin: own }) => own && isMade(own, place, pin))
      .flatMap(({ from, to }) => [from, to]);
    const cases = this.view.cases(
      road,
      kind,
      place.joints.map((_, at) => at)
    );
    return this.#of(cases, [...[road, ...roads].flatMap((each) => this.#railsOf(each)), ...pins]);
  }

  #of(cases: readonly Case[], nodes: readonly number[]): ReadonlySet<number> {
    const marks = new Set<number>();
    for (const each of cases) {
      const { reach, met } = coneOf(each);
      const { members, rep } = each.network;
      for (const conductor of reach) for (const one of members(conductor)) marks.add(one);
      if (!met) continue;
      const joined = each.source.flatMap((end) => [...members(rep(end))]);
      for (const one of joined) if (!this.#ends.has(one)) marks.add(one);
      for (const one of [...marks]) for (const node of this.#bounds.get(one) ?? []) marks.add(node);
      for (const node of nodes) marks.add(node);
    }
    return marks;
  }

  #railsOf(road: string): readonly number[] {
    const own = this.whole.posts.rails.find(({ name }) => name === road);
    return own ? [own.feed, own.home] : [];
  }
}

/** Nodes of a terminal's own conductor that a wiring with faults no longer joins to it. */
function lost(good: Wiring, bad: Wiring, { terminals }: Posts): readonly number[] {
  const found: number[] = [];
  for (let node = 0; node < good.conductors; node++) {
    const own = terminals.find((each) => good.find(each) === good.find(node));
    if (own !== undefined && bad.find(node) !== bad.find(own)) found.push(node);
  }
  return found;
}

/** The marks that faults touch. */
export function touchedBy(
  { wiring, posts }: Whole,
  { wiring: bad, before, after }: Hurt
): ReadonlySet<number> {
  const ends = new Set(wiring.sources.flat());
  const nodes = [...before, ...after].flatMap(({ from, to }) => [from, to]);
  const parted = before.some(({ role, from }) => role === 'joined' && ends.has(wiring.find(from)));
  const touching = bad.touching
    .flat()
    .flatMap((road) => posts.rails.find(({ name }) => name === road)?.feed ?? []);
  return new Set([
    ...[...nodes, ...touching]
      .filter((node) => node < wiring.conductors)
      .map((node) => wiring.find(node)),
    ...(parted ? lost(wiring, bad, posts) : [])
  ]);
}
