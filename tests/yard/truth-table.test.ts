import { describe, expect, test } from 'vitest';
import { liveRoads, type YardInput } from '../../src/lib/yard';
import { sceneOf, yardOf } from './build';

/**
 * Live roads by the engine's volts against a search through a plain graph, in every state of small
 * yards. The graph is written from the words of the design alone, and shares no code with the yard:
 * feed – toggle – plug – rail of a deck road; feed – pin contact – toggle – rail of a stabling road,
 * and of an improved running road; feed – rail of a running road as often built. A deck road that
 * faces one running road faces the one opposite too. Every return rail
 * is looped to its side's joint, the deck's goes home through the plug.
 */
interface Built {
  readonly deck: number;
  readonly stabling: number;
  readonly improved?: boolean;
  /** A second running road, opposite the first. */
  readonly through?: boolean;
  readonly more?: YardInput;
}

interface State {
  readonly on: ReadonlySet<string>;
  /** The hole in which the pin is home, if any. */
  readonly home?: string;
  readonly plugged: boolean;
}

const named = (names: string, count: number): readonly string[] => [...names].slice(0, count);
const deckNames = ({ deck }: Built): readonly string[] => [...named('ABCD', deck), 'R'];
const stablingNames = ({ stabling }: Built): readonly string[] => named('123', stabling);
const toggled = (built: Built): readonly string[] => [
  ...(built.improved ? ['Q'] : []),
  ...deckNames(built),
  ...(built.improved && built.through ? ['QQ'] : []),
  ...stablingNames(built)
];

/** Where the deck stands in its holes, mm: 60 mm from road to road, 75 mm to R, first stabling road at 35 mm. */
function stops(built: Built): readonly [hole: string, deckMm: number][] {
  const release = (built.deck - 1) * 60 + 75;
  return [
    ...deckNames(built).map((name, index): [string, number] => [
      name,
      name === 'R' ? -release : -60 * index
    ]),
    ...stablingNames(built).map((name, index): [string, number] => [
      name,
      35 + 60 * index - release
    ])
  ];
}

/** Pairs of points which a closed contact, or plain wire, joins. */
function joins(built: Built, { on, home, plugged }: State): readonly [string, string][] {
  const pairs: [string, string, boolean][] = [['deck return', 'return', plugged]];
  for (const name of deckNames(built)) {
    pairs.push(['feed', `lead ${name}`, on.has(name)]);
    pairs.push([`lead ${name}`, `feed rail ${name}`, plugged]);
    pairs.push([`return rail ${name}`, 'deck return', true]);
  }
  for (const name of stablingNames(built)) {
    pairs.push(['feed', `guarded ${name}`, home === name]);
    pairs.push([`guarded ${name}`, `feed rail ${name}`, on.has(name)]);
    pairs.push([`return rail ${name}`, 'return', true]);
  }
  const running = home !== undefined && deckNames(built).includes(home);
  for (const name of ['Q', 'QQ']) {
    pairs.push(['feed', `guarded ${name}`, !built.improved || running]);
    pairs.push([`guarded ${name}`, `feed rail ${name}`, !built.improved || on.has(name)]);
    pairs.push([`return rail ${name}`, 'return', true]);
  }
  return pairs.flatMap(([a, b, closed]) => (closed ? [[a, b]] : []));
}

/** Every point that is joined to `from`. */
function reached(pairs: readonly [string, string][], from: string): ReadonlySet<string> {
  const found = new Set([from]);
  for (let grew = true; grew;) {
    const before = found.size;
    for (const [a, b] of pairs) {
      if (found.has(a)) found.add(b);
      else if (found.has(b)) found.add(a);
    }
    grew = found.size > before;
  }
  return found;
}

function expected(built: Built, state: State): string {
  const pairs = joins(built, state);
  const [feed, home] = [reached(pairs, 'feed'), reached(pairs, 'return')];
  const beyond = built.through ? ['QQ'] : [];
  return ['Q', ...deckNames(built), ...beyond, ...stablingNames(built)]
    .filter((road) => feed.has(`feed rail ${road}`) && home.has(`return rail ${road}`))
    .join(' ');
}

/** Every way to choose from `names`. */
const subsets = (names: readonly string[]): readonly ReadonlySet<string>[] =>
  Array.from(
    { length: 2 ** names.length },
    (_, bits) => new Set(names.filter((__, index) => (bits >> index) & 1))
  );

/** Deck positions with the pin: each hole with the pin home and out, and one place between holes. */
const places = (built: Built): readonly { deck: number; home?: string }[] => [
  ...stops(built).flatMap(([home, deck]) => [{ deck, home }, { deck }]),
  { deck: -13 }
];

/** Compares the two in every state; gives how many there are, and those in which they differ. */
function compare(built: Built): { readonly states: number; readonly wrong: readonly object[] } {
  const yard = yardOf({
    deckRoads: built.deck,
    stablingRoads: built.stabling,
    releaseRoad: true,
    runningRoad: built.improved ? 'interlocked' : 'direct',
    runningEnds: built.through ? 'both' : 'west',
    ...built.more
  });
  const wrong: object[] = [];
  let states = 0;
  for (const { deck, home } of places(built)) {
    for (const plug of ['in', 'out'] as const) {
      const scene = sceneOf(yard, { deck, pin: home ? 'home' : 'out', plug });
      for (const on of subsets(toggled(built))) {
        const switches = Object.fromEntries([...on].map((road) => [road, true]));
        const found = [...liveRoads(yard, { ...scene, switches })].join(' ');
        const truth = expected(built, { on, plugged: plug === 'in', ...(home && { home }) });
        if (found !== truth) wrong.push({ ...scene, switches, found, truth });
        states++;
      }
    }
  }
  return { states, wrong };
}

describe('liveRoads(scene) in every state', { timeout: 300_000 }, () => {
  test.each<[what: string, states: number, built: Built]>([
    ['1 + 0 roads', 40, { deck: 1, stabling: 0 }],
    ['1 + 1 roads', 112, { deck: 1, stabling: 1 }],
    ['2 + 1 roads, improved', 576, { deck: 2, stabling: 1, improved: true }],
    ['2 + 2 roads, returns in rings', 704, { deck: 2, stabling: 2, more: { return: 'ring' } }],
    ['3 + 1 roads, returns in stars', 704, { deck: 3, stabling: 1, more: { return: 'star' } }],
    ['1 + 1 roads, running roads at both ends', 112, { deck: 1, stabling: 1, through: true }],
    [
      '2 + 1 roads, improved, at both ends',
      1152,
      { deck: 2, stabling: 1, improved: true, through: true }
    ],
    ['4 + 3 roads', 8704, { deck: 4, stabling: 3 }]
  ])('%s, %d states: as a plain graph says', (_, states, built) => {
    const found = compare(built);
    expect(found.wrong).toEqual([]);
    expect(found.states).toBe(states);
  });

  test('the plain graph tells roads apart: it is no constant', () => {
    const quay: Built = { deck: 4, stabling: 3, improved: true };
    const all = new Set(toggled(quay));
    expect(expected(quay, { on: all, home: 'C', plugged: true })).toBe('Q A B C D R');
    expect(expected(quay, { on: all, home: '2', plugged: true })).toBe('A B C D R 2');
    expect(expected(quay, { on: all, home: '2', plugged: false })).toBe('2');
    expect(expected(quay, { on: all, plugged: true })).toBe('A B C D R');
    expect(expected(quay, { on: new Set(['B']), home: '1', plugged: true })).toBe('B');
    const through: Built = { deck: 2, stabling: 1, improved: true, through: true };
    const most = new Set(toggled(through));
    expect(expected(through, { on: most, home: 'B', plugged: true })).toBe('Q A B R QQ');
    expect(expected(through, { on: most, home: '1', plugged: true })).toBe('A B R 1');
  });
});
