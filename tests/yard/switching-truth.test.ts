import { describe, expect, test } from 'vitest';
import { liveRoads, type YardInput } from '../../src/lib/yard';
import { sceneOf, yardOf, type SceneInput } from './build';

/**
 * Live roads of a yard with a rotary selector or with pushes, in every state, against a search
 * through a plain graph that shares no code with the yard. Two storage roads, release road R,
 * stabling road 1, running road Q through the running holes' contacts: Q, A, B, R and 1 in the
 * order of the selector. Deck road: feed – switch – plug – rail, home through the plug. Stabling and
 * running road: feed – pin contact – switch – rail, home on the fixed side.
 */
const order = ['Q', 'A', 'B', 'R', '1'] as const;
type Name = (typeof order)[number];
const built: YardInput = {
  deckRoads: 2,
  stablingRoads: 1,
  releaseRoad: true,
  runningRoad: 'interlocked'
};

/** Deck positions, mm: 60 mm from A to B, 75 mm on to R; stabling road 1 lies 35 mm south of Q. */
const stops: readonly [hole: string, deck: number][] = [
  ['A', 0],
  ['B', -60],
  ['R', -135],
  ['1', -100]
];

interface State {
  readonly made: readonly string[];
  readonly home: string | undefined;
  readonly plugged: boolean;
}

function plainLive({ made, home, plugged }: State): string {
  const wires: [string, string][] = [['return', 'fixed return']];
  if (plugged) wires.push(['return', 'deck return']);
  for (const road of order) {
    const deck = 'ABR'.includes(road);
    const guarded = deck || (road === '1' ? home === '1' : 'ABR'.includes(home ?? '-'));
    if (guarded) wires.push(['feed', `before ${road}`]);
    if (made.includes(road)) wires.push([`before ${road}`, `behind ${road}`]);
    if (!deck || plugged) wires.push([`behind ${road}`, `feed rail ${road}`]);
    wires.push([deck ? 'deck return' : 'fixed return', `return rail ${road}`]);
  }
  const [out, back] = [flood(wires, 'feed'), flood(wires, 'return')];
  return order
    .filter((road) => out.has(`feed rail ${road}`) && back.has(`return rail ${road}`))
    .join(' ');
}

function flood(wires: readonly [string, string][], from: string): ReadonlySet<string> {
  const wet = new Set([from]);
  const spread = () =>
    wires.filter(([a, b]) => wet.has(a) !== wet.has(b)).map(([a, b]) => wet.add(a).add(b)).length;
  while (spread() > 0);
  return wet;
}

/** Every deck position with pin and plug. */
const places: readonly (SceneInput & { readonly home?: string })[] = [
  ...stops.flatMap(([home, deck]) => [
    { deck, pin: 'home' as const, home },
    { deck, pin: 'out' as const }
  ]),
  { deck: -13, pin: 'out' as const }
].flatMap((place) => [
  { ...place, plug: 'in' as const },
  { ...place, plug: 'out' as const }
]);

/** States of the hand against the roads whose contact they make. */
type Hand = readonly [input: SceneInput, made: readonly Name[]];

function differences(input: YardInput, hands: readonly Hand[]) {
  const yard = yardOf({ ...built, ...input });
  const all = places.flatMap(({ home, ...place }) =>
    hands.map(([hand, made]) => {
      const found = [...liveRoads(yard, sceneOf(yard, { ...place, ...hand }))].join(' ');
      const truth = plainLive({ made, home, plugged: place.plug === 'in' });
      return { ...place, ...hand, found, truth };
    })
  );
  return {
    states: all.length,
    patterns: new Set(all.map(({ truth }) => truth)).size,
    wrong: all.filter(({ found, truth }) => found !== truth)
  };
}

const between: readonly (readonly [stand: string, made: readonly Name[]])[] = [
  ['off-Q', ['Q']],
  ['Q-A', ['Q', 'A']],
  ['A-B', ['A', 'B']],
  ['B-R', ['B', 'R']],
  ['R-1', ['R', '1']]
];
const at: readonly Hand[] = [
  [{ selector: 'off' }, []],
  ...order.map((road): Hand => [{ selector: road }, [road]])
];
const subsets: readonly Hand[] = Array.from({ length: 32 }, (_, bits) => {
  const made = order.filter((__, index) => (bits >> index) & 1);
  return [{ switches: Object.fromEntries(made.map((road) => [road, true])) }, made];
});

describe('liveRoads(scene) in every state', { timeout: 300_000 }, () => {
  test.each<[what: string, states: number, input: YardInput, hands: readonly Hand[]]>([
    [
      'a break-before-make rotary: one road at a time, none between two',
      198,
      { switching: 'rotary' },
      [...at, ...between.map(([selector]): Hand => [{ selector }, []])]
    ],
    [
      'a make-before-break rotary: both roads between two',
      198,
      { switching: 'rotary', rotary: 'make before break' },
      [...at, ...between.map(([selector, made]): Hand => [{ selector }, made])]
    ],
    ['pushes: the roads that are held', 576, { switching: 'pushes' }, subsets]
  ])('%s (%d states): as a plain graph says', (_, states, input, hands) => {
    const found = differences(input, hands);
    expect(found.wrong).toEqual([]);
    expect(found.states).toBe(states);
    expect(found.patterns).toBeGreaterThan(4);
  });

  test('the plain graph tells roads apart', () => {
    const made = [...order];
    expect(plainLive({ made, home: 'B', plugged: true })).toBe('Q A B R');
    expect(plainLive({ made, home: '1', plugged: true })).toBe('A B R 1');
    expect(plainLive({ made: ['Q', 'A'], home: 'A', plugged: false })).toBe('Q');
    expect(plainLive({ made, home: undefined, plugged: false })).toBe('');
  });
});
