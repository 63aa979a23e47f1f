import type { Fault } from '../../yard';
import { coneOf, unsafeCount } from './count';
import { casesOf, type Moment, type OpenCase } from './moments';
import { gathered, plainNetwork, type Network } from './network';
import { endKey, noteBreaches, type Breach, type Found, type GapProof, type Ground } from './proof';
import { isAlways, wiringOf, type Seen, type Wiring } from './wiring';

/** What is known of a yard without faults, with the plug in or out. */
interface SoundPlug {
  readonly plug: 'in' | 'out';
  readonly wiring: Wiring;
  readonly parts: ReadonlyMap<string, Seen>;
  /** Unsafe settings of each moment. */
  readonly counts: readonly bigint[];
  /** The moments in which an open end reaches a conductor. */
  readonly reached: ReadonlyMap<number, readonly number[]>;
}

/** The proof of a yard without faults, and what each moment of it rests on. */
export interface Sound {
  readonly ground: Ground;
  readonly proof: GapProof;
  readonly plugs: readonly SoundPlug[];
}

/** Conductors on which the count of a moment rests, terminals left out. */
const restsOn = (cases: readonly OpenCase[]): ReadonlySet<number> =>
  new Set(
    cases.flatMap((each) =>
      [...coneOf(each).reach].flatMap((rep) => [...each.network.members(rep)])
    )
  );

function soundPlug(ground: Ground, plug: 'in' | 'out', found: Found): SoundPlug {
  const { controls, moments } = ground;
  const wiring = wiringOf({ ...ground, plug, faults: [] });
  const plain = plainNetwork(wiring);
  const reached = new Map<number, number[]>();
  const counts = moments.map((moment, index) => {
    const cases = casesOf(plain, moment);
    for (const conductor of restsOn(cases)) {
      const known = reached.get(conductor);
      if (known) known.push(index);
      else reached.set(conductor, [index]);
    }
    const count = unsafeCount(cases, controls);
    if (count > 0n) noteBreaches(found, plain, moment, { plug, controls });
    return count;
  });
  const parts = new Map(wiring.parts.map((each) => [each.part.id, each]));
  return { plug, wiring, parts, counts, reached };
}

const sum = (counts: readonly bigint[]): bigint => counts.reduce((all, each) => all + each, 0n);

/** Proves a yard without faults, and keeps what each moment rests on. */
export function soundOf(ground: Ground): Sound {
  const found: Found = new Map();
  const plugs = ground.plugs.map((plug) => soundPlug(ground, plug, found));
  const home = (_: bigint, index: number) => ground.moments[index]?.pin === 'home';
  return {
    ground,
    plugs,
    proof: {
      unsafe: sum(plugs.map(({ counts }) => sum(counts))),
      unsafeHome: sum(plugs.map(({ counts }) => sum(counts.filter(home)))),
      breaches: [...found.values()]
    }
  };
}

const isSame = (a: Seen, b: Seen): boolean =>
  a.part.from === b.part.from &&
  a.part.to === b.part.to &&
  a.part.kind === b.part.kind &&
  a.closed.every((closed, stand) => closed === b.closed[stand]);

/** Parts that a fault changes, takes away or adds, as they are without it and with it. */
function differing({ parts }: SoundPlug, bad: Wiring): readonly Seen[] {
  const left = new Set(parts.keys());
  const changed = bad.parts.flatMap((now) => {
    const before = parts.get(now.part.id);
    left.delete(now.part.id);
    if (!before) return [now];
    return isSame(before, now) ? [] : [before, now];
  });
  return [...changed, ...[...left].map((id) => parts.get(id) as Seen)];
}

/** Whether pin contacts and touching rails could ever join the two terminals of a source. */
function canShort({ sources, pinned, touching, rails }: Wiring): boolean {
  const feed = (road: string) => rails.get(road)?.feed ?? -1;
  const pairs = [
    ...pinned.map(({ a, b }) => [a, b] as const),
    ...touching.map(([one, other]) => [feed(one), feed(other)] as const)
  ];
  const groups = gathered(pairs);
  return sources.some(([a, b]) => a === b || groups.some((group) => group.has(a) && group.has(b)));
}

/**
 * The moments whose counts a fault may change; undefined when it may change all of them.
 *
 * What an open end reaches decides its count, so a fault that changes nothing there changes no count.
 * It may change all where it parts a terminal's own conductor, or lets the terminals be shorted.
 */
function touched(sound: SoundPlug, bad: Wiring): ReadonlySet<number> | undefined {
  const good = sound.wiring;
  if (canShort(bad) || canShort(good) || bad.pinned.length !== good.pinned.length) return undefined;
  const ends = new Set(good.sources.flat());
  const different = differing(sound, bad);
  const before = (each: Seen) => sound.parts.get(each.part.id) === each;
  if (
    different.some((each) => before(each) && isAlways(each) && ends.has(good.find(each.part.from)))
  )
    return undefined;
  const conductors = [
    ...different.flatMap(({ part }) => [good.find(part.from), good.find(part.to)]),
    ...good.pinned.flatMap((contact, index) =>
      JSON.stringify(contact.when) === JSON.stringify(bad.pinned[index]?.when)
        ? []
        : [contact.a, contact.b]
    ),
    ...bad.touching.flat().map((road) => good.rails.get(road)?.feed ?? -1)
  ];
  return new Set(conductors.flatMap((conductor) => sound.reached.get(conductor) ?? []));
}

/** The moment of a breach. */
const momentOf = ({ moments }: Ground, { pin, deckMm }: Breach): number =>
  moments.findIndex((moment) => moment.pin === pin && moment.place.deckMm === deckMm);

/** The plug states of a yard with a fault, and the moments that it touches. */
interface Hurt {
  readonly sound: SoundPlug;
  readonly plain: Network;
  readonly at: readonly number[];
}

/**
 * The same proof as `proveGap` gives with these faults, worked out anew only in the moments that they touch.
 * @throws TooManyError when one road can be live in too many ways to try.
 */
export function proveHurt({ ground, proof, plugs }: Sound, faults: readonly Fault[]): GapProof {
  const { controls, moments } = ground;
  const all = moments.map((_, index) => index);
  const hurts: readonly Hurt[] = plugs.map((sound) => {
    const bad = wiringOf({ ...ground, plug: sound.plug, faults });
    const at = touched(sound, bad);
    return { sound, plain: plainNetwork(bad), at: at ? [...at] : all };
  });
  const isHurt = (breach: Breach) =>
    hurts.some(
      ({ sound, at }) => sound.plug === breach.plug && at.includes(momentOf(ground, breach))
    );
  const lost = proof.breaches.filter(isHurt);
  const found: Found = new Map(
    proof.breaches.filter((breach) => !isHurt(breach)).map((breach) => [endKey(breach), breach])
  );
  const note = ({ sound: { plug }, plain }: Hurt, moment: Moment) =>
    noteBreaches(found, plain, moment, { plug, controls });
  let { unsafe, unsafeHome } = proof;
  for (const hurt of hurts) {
    for (const index of hurt.at) {
      const moment = moments[index] as Moment;
      const count = unsafeCount(casesOf(hurt.plain, moment), controls);
      const more = count - (hurt.sound.counts[index] as bigint);
      unsafe += more;
      if (moment.pin === 'home') unsafeHome += more;
      if (count > 0n) note(hurt, moment);
    }
  }
  if (lost.length > 0) {
    for (const hurt of hurts) {
      const at = new Set(hurt.at);
      hurt.sound.counts.forEach((count, index) => {
        if (count > 0n && !at.has(index)) note(hurt, moments[index] as Moment);
      });
    }
  }
  return { unsafe, unsafeHome, breaches: [...found.values()] };
}
