import {
  admit,
  apply,
  beyond,
  facing,
  fit,
  holes,
  placed,
  roadsOf,
  SceneSchema,
  selectorStands,
  switchedRoads,
  travel,
  type Placed,
  type Scene,
  type Yard
} from '../../src/lib/yard';

/**
 * The same question answered without thought: every state of the yard, one bit each, floods through
 * its wiring. State s of a yard with toggles or pushes has switch k on when bit k of s is
 * set; of one with a rotary its selector is at stand s.
 */
type Bits = Uint32Array;

export interface BruteMoment {
  readonly deckMm: number;
  readonly pin: 'home' | 'out';
  readonly plug: 'in' | 'out';
}

const hasHole = (yard: Yard, deckMm: number): boolean => {
  try {
    fit('scene', yard, { ...moment(yard, { deckMm, pin: 'out', plug: 'in' }), pin: 'home' });
    return true;
  } catch {
    return false;
  }
};

const moment = (yard: Yard, { deckMm, pin, plug }: BruteMoment): Scene => ({
  ...fit('scene', yard, admit('scene', SceneSchema, { pin: 'out', plug })),
  deck: deckMm,
  pin
});

/** What the deck's position decides, in the yard's own words. */
export function view(yard: Yard, deckMm: number): string {
  const open = roadsOf(yard).flatMap(({ name }) =>
    (['west', 'east'] as const)
      .filter((end) => beyond(yard, deckMm, name, end).kind === 'gap')
      .map((end) => `${name} ${end}`)
  );
  const pins = hasHole(yard, deckMm)
    ? apply(yard, moment(yard, { deckMm, pin: 'home', plug: 'in' }))
        .flatMap(({ parts }) => parts)
        .filter(({ kind, closed }) => kind === 'pin contact' && closed)
        .map(({ id }) => id)
    : ['none'];
  return JSON.stringify([open.sort(), facing(yard, deckMm), hasHole(yard, deckMm), pins]);
}

/** One deck position of each view: tried at each edge, a hair to each side of it, and every few millimetres. */
export function brutePlaces(yard: Yard): readonly number[] {
  const { least, most } = travel(yard);
  const all = roadsOf(yard);
  const edges = all
    .filter(({ bed }) => bed !== 'deck')
    .flatMap((fixed) =>
      all
        .filter(({ bed }) => bed === 'deck')
        .flatMap((road) =>
          [0, yard.toleranceMm, -yard.toleranceMm, yard.openingMm / 2, -yard.openingMm / 2].flatMap(
            (by) => [-0.01, 0, 0.01].map((hair) => fixed.southMm - road.southMm + by + hair)
          )
        )
    );
  const grid = Array.from(
    { length: Math.ceil((most - least) / 7.3) + 1 },
    (_, i) => least + i * 7.3
  );
  const kinds = new Map<string, number>();
  for (const mm of [...edges, ...grid].filter((each) => each >= least && each <= most)) {
    const key = view(yard, mm);
    if (!kinds.has(key)) kinds.set(key, mm);
  }
  return [...kinds.values()];
}

/** Every view with the pin out; with the pin home the deck stands in line with its hole. */
export function bruteMoments(yard: Yard): readonly BruteMoment[] {
  const pinned = new Map(holes(yard).map(({ deckMm }) => [view(yard, deckMm), deckMm]));
  const all = [
    ...[...pinned.values()].map((deckMm) => ({ deckMm, pin: 'home' as const })),
    ...brutePlaces(yard).map((deckMm) => ({ deckMm, pin: 'out' as const }))
  ];
  return all.flatMap((at) =>
    (yard.plug ? (['in', 'out'] as const) : (['in'] as const)).map((plug) => ({ ...at, plug }))
  );
}

/** The bits of the states, of `count` in all, for which `holds`. */
function bitsWhere(count: number, holds: (state: number) => boolean): Bits {
  const bits = new Uint32Array(Math.ceil(count / 32));
  for (let s = 0; s < count; s++) {
    if (holds(s)) bits[s >> 5] = (bits[s >> 5] as number) | (1 << (s & 31));
  }
  return bits;
}

/** How many settings of its switches a yard has: stands of the selector, or 2 for each switch. */
const settingCount = (yard: Yard): number =>
  yard.switching === 'rotary' ? selectorStands(yard).length : 2 ** switchedRoads(yard).length;

/** Every part, with the settings in which it is closed. */
function partBits(yard: Yard, scene: Scene) {
  const count = settingCount(yard);
  const partsOf = (change: Partial<Scene>) => apply(yard, { ...scene, ...change }).flatMap(placed);
  if (yard.switching === 'rotary') {
    const all = selectorStands(yard).map((selector) => partsOf({ selector }));
    return (all[0] as readonly Placed[]).map((part, index) => ({
      part,
      when: bitsWhere(count, (s) => all[s]?.[index]?.closed ?? false)
    }));
  }
  const names = switchedRoads(yard);
  const on = partsOf({ switches: Object.fromEntries(names.map((name) => [name, true])) });
  return partsOf({}).map((part, index) => {
    const then = on[index]?.closed ?? false;
    const k = names.indexOf(part.id.split(' ').at(-1) as string);
    const closed = (s: number) => ((s >> k) & 1 ? then : part.closed);
    return { part, when: bitsWhere(count, then === part.closed ? () => then : closed) };
  });
}

interface Edge {
  readonly a: number;
  readonly b: number;
  readonly when: Bits;
}

/** Spreads marks along edges until nothing changes. */
function flood(marks: readonly Bits[], edges: readonly Edge[], without: number): void {
  for (let changed = true; changed;) {
    changed = false;
    for (const { a, b, when } of edges) {
      if (a === without || b === without) continue;
      const at = marks[a] as Bits;
      const to = marks[b] as Bits;
      for (let w = 0; w < when.length; w++) {
        const both = ((at[w] as number) | (to[w] as number)) & (when[w] as number);
        if (both & ~(at[w] as number) || both & ~(to[w] as number)) {
          at[w] = (at[w] as number) | both;
          to[w] = (to[w] as number) | both;
          changed = true;
        }
      }
    }
  }
}

export interface Brute {
  readonly states: bigint;
  readonly unsafe: bigint;
  readonly unsafeHome: bigint;
  /** Ends that some state makes live. */
  readonly ends: ReadonlySet<string>;
}

/** Labels of joined nodes: the least label spreads until nothing changes. */
function labels(nodes: readonly string[], pairs: readonly (readonly [string, string])[]) {
  const label = new Map(nodes.map((node, index) => [node, index]));
  for (let changed = true; changed;) {
    changed = false;
    for (const [a, b] of pairs) {
      const least = Math.min(label.get(a) as number, label.get(b) as number);
      if (label.get(a) !== least || label.get(b) !== least) {
        label.set(a, least);
        label.set(b, least);
        changed = true;
      }
    }
  }
  return label;
}

const isLoad = ({ kind }: Placed): boolean => ['resistor', 'lamp', 'lamp guard'].includes(kind);

function liveInMoment(
  yard: Yard,
  at: BruteMoment,
  change: (scene: Scene) => Scene
): { readonly bits: Bits; readonly ends: readonly string[] } {
  const parts = partBits(yard, change(moment(yard, at)));
  const names = roadsOf(yard).map(({ name }) => name);
  const every = bitsWhere(settingCount(yard), () => true);
  const always = (when: Bits) => when.every((word, w) => word === every[w]);
  const out = new Uint32Array(every.length);
  const ends = new Set<string>();
  const joints = facing(yard, at.deckMm);
  const joined = [
    ...parts
      .filter(({ part, when }) => always(when) && !isLoad(part))
      .map(({ part: { from, to } }) => [from, to] as const)
  ];
  const nodes = [
    ...new Set(['feed', 'return', ...parts.flatMap(({ part }) => [part.from, part.to])])
  ];
  const label = labels(nodes, joined);
  const of = (node: string) => label.get(node) as number;
  const edges: Edge[] = [
    ...joints.flatMap(({ fixed, deckRoad }) =>
      ['feed', 'return'].map((leg) => ({
        a: of(`${leg} rail ${fixed}`),
        b: of(`${leg} rail ${deckRoad}`),
        when: every
      }))
    ),
    ...parts.flatMap(({ part, when }) =>
      (always(when) && !isLoad(part)) ||
      when.every((word) => word === 0) ||
      (isLoad(part) && of('feed') === of('return'))
        ? []
        : [{ a: of(part.from), b: of(part.to), when }]
    ),
    ...(of('feed') === of('return') ? [] : names).map((name) => ({
      a: of(`feed rail ${name}`),
      b: of(`return rail ${name}`),
      when: every
    }))
  ];
  const used = [...new Set([...edges.flatMap(({ a, b }) => [a, b]), of('feed'), of('return')])];
  const fresh = (without: number) => {
    const marks = nodes.map(() => new Uint32Array(every.length));
    for (const end of [of('feed'), of('return')]) if (end !== without) marks[end]?.set(every);
    flood(marks, edges, without);
    return marks;
  };
  const open = names.flatMap((name) =>
    (['west', 'east'] as const)
      .filter((end) => beyond(yard, at.deckMm, name, end).kind === 'gap')
      .map((end) => ({ name, end }))
  );
  const shorted = of('feed') === of('return');
  const tested = open.map(({ name }) => {
    const f = of(`feed rail ${name}`);
    const r = of(`return rail ${name}`);
    return { f, r, live: f === r ? new Uint32Array(every.length) : every.slice() };
  });
  if (shorted) {
    const marks = fresh(-1);
    for (const { f, r, live } of tested) {
      live.forEach((word, w) => {
        live[w] = word & (marks[f]?.[w] as number) & (marks[r]?.[w] as number);
      });
    }
  }
  for (const without of shorted ? [] : [-1, ...used]) {
    const marks = fresh(without);
    for (const { f, r, live } of tested) {
      for (let w = 0; w < live.length; w++) {
        const reached =
          (without === f ? 0 : (marks[f]?.[w] as number)) |
          (without === r ? 0 : (marks[r]?.[w] as number));
        live[w] = (live[w] as number) & reached;
      }
    }
  }
  tested.forEach(({ live }, index) => {
    if (live.some((word) => word !== 0)) ends.add(`${open[index]?.name} ${open[index]?.end}`);
    for (let w = 0; w < out.length; w++) out[w] = (out[w] as number) | (live[w] as number);
  });
  return { bits: out, ends: [...ends] };
}

const ones = (bits: Bits): number =>
  bits.reduce((sum, word) => sum + (word >>> 0).toString(2).replaceAll('0', '').length, 0);

/** Counts the unsafe states of a yard by trying all of them. */
export function brute(
  yard: Yard,
  change: (scene: Scene) => Scene = (scene) => scene,
  moments = bruteMoments(yard)
): Brute {
  let unsafe = 0;
  let unsafeHome = 0;
  const ends = new Set<string>();
  for (const at of moments) {
    const found = liveInMoment(yard, at, change);
    const count = ones(found.bits);
    unsafe += count;
    if (at.pin === 'home') unsafeHome += count;
    for (const end of found.ends) ends.add(end);
  }
  return {
    states: BigInt(moments.length * settingCount(yard)),
    unsafe: BigInt(unsafe),
    unsafeHome: BigInt(unsafeHome),
    ends
  };
}
