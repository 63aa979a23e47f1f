import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  admit,
  apply,
  faultName,
  FaultSchema,
  faultsOf,
  liveRoads,
  read,
  roads,
  roadsOf,
  type Fault,
  type Yard
} from '../../src/lib/yard';
import { sceneOf, yardOf, type Moment } from './build';
import { anyMoment } from './random';

/** Lamps of yards by the shape of their return, so that every kind is among them. */
const lampsOf = { chain: 'none', ring: 'own', star: 'track' } as const;

/** Yards up to 4 + 3 roads: every return, every running road; chains without switches as well. */
const yards: readonly Yard[] = [1, 2, 3, 4].flatMap((deckRoads) =>
  [0, 1, 2, 3]
    .filter((stablingRoads) => stablingRoads <= deckRoads)
    .flatMap((stablingRoads) =>
      (['chain', 'ring', 'star'] as const).flatMap((shape) =>
        (['none', 'direct', 'interlocked'] as const).flatMap((runningRoad) =>
          (shape === 'chain' ? (['toggles', 'none'] as const) : (['toggles'] as const)).map(
            (switching) =>
              yardOf({
                deckRoads,
                stablingRoads,
                return: shape,
                runningRoad,
                switching,
                lamps: lampsOf[shape]
              })
          )
        )
      )
    )
);

const pairs = (count: number): number => (count * (count - 1)) / 2;

/** How many faults a chained yard with a direct running road has, counted part by part. */
function counted(storage: number, stabling: number): number {
  const [deck, all] = [storage + 1, storage + stabling + 2];
  const toggles = deck + stabling;
  const plug = deck + 2;
  const links = storage + 1 + 1 + stabling;
  const wires = 1 + (all - 1) + 1 + 2 * all;
  const contacts = toggles + plug + stabling;
  const bridges = plug - 2 + (toggles - 1);
  const [shorts, linkPast] = [all, 1];
  return [
    [shorts, linkPast],
    [contacts, toggles + stabling, wires, links],
    [pairs(deck) + pairs(toggles), bridges, 2 * (plug - 1), 2 * stabling],
    [wires + links + contacts, deck + stabling, all]
  ]
    .flat()
    .reduce((sum, each) => sum + each, 0);
}

describe('faultsOf(yard)', () => {
  test.each([
    [2, 1, 107],
    [5, 4, 278],
    [12, 6, 647]
  ])('%d + %d roads have %d faults', (deckRoads, stablingRoads, count) => {
    const names = faultsOf(yardOf({ deckRoads, stablingRoads })).map(faultName);
    expect([names.length, new Set(names).size]).toEqual([count, count]);
    expect(counted(deckRoads, stablingRoads)).toBe(count);
  });

  test(`each fault of ${yards.length} yards is there once, fits, and comes back from its JSON`, () => {
    for (const yard of yards) {
      const all = faultsOf(yard);
      expect(new Set(all.map(faultName)).size).toBe(all.length);
      expect(
        all.map((fault) => admit('fault', FaultSchema, JSON.parse(JSON.stringify(fault))))
      ).toEqual(all);
      expect(sceneOf(yard, { faults: all as Fault[] }).faults).toEqual(all);
    }
  });
});

/** Every node's volts and every element's amps are numbers, or said to be none. */
function allNumbers({ yard, scene }: Moment): boolean {
  const { circuit, between, amps } = read(yard, scene);
  return circuit.elements.every(({ id, a, b }) => {
    const volts = between(a, b);
    return Number.isFinite(amps(id)) && (volts === undefined || Number.isFinite(volts));
  });
}

test(
  'read(scene): any single fault of any yard up to 4 + 3 throws nothing and gives numbers',
  { timeout: 300_000 },
  () => {
    let count = 0;
    const wrong: string[] = [];
    for (const yard of yards) {
      const names = roads(yard);
      const toggles =
        yard.switching === 'toggles'
          ? names.filter((name) => !(name === 'Q' && yard.runningRoad === 'direct'))
          : [];
      const sound = sceneOf(yard, {
        controller: 1,
        switches: Object.fromEntries(toggles.map((name) => [name, true])),
        locos: {
          Plover: names[0] as string,
          Heron:
            names.at(-1) === names[0]
              ? { road: names[0] as string, atMm: 200 }
              : (names.at(-1) as string)
        }
      });
      for (const fault of faultsOf(yard)) {
        count++;
        if (!allNumbers({ yard, scene: { ...sound, faults: [fault] } }))
          wrong.push(faultName(fault));
      }
    }
    expect(wrong).toEqual([]);
    expect(count).toBeGreaterThan(10_000);
  }
);

/** Names of the roads in whose own loop a part stands; worked out from its name alone. */
function served(yard: Yard, id: string): readonly string[] {
  const all = roadsOf(yard);
  const names = all.map(({ name }) => name);
  const deck = all.filter(({ bed }) => bed === 'deck').map(({ name }) => name);
  const side = (name: string) => {
    const kind = (road: string) =>
      deck.includes(road) ? 'deck' : all.find((each) => each.name === road)?.kind;
    return yard.plug ? names.filter((each) => kind(each) === kind(name)) : names;
  };
  const lamp = /^lamp (?:wire )?(\w+)$/.exec(id)?.[1];
  if (lamp !== undefined) return yard.lamps === 'track' ? [lamp] : [];
  const own = /^(?:toggle|pin contact|(?:feed|return) dropper|plug) (\w+)$/.exec(id)?.[1];
  if (own !== undefined) return [own];
  const hop = /^feed link \w+-(\w+)$/.exec(id)?.[1];
  if (hop !== undefined) return names.slice(names.indexOf(hop));
  if (id.startsWith('plug return') || id === 'deck return') return deck;
  const star = /^return wire (\w+)$/.exec(id)?.[1];
  if (star !== undefined) return [star];
  const link = /^(?:loop|closing) link(?: \w+)?(?:-(\w+)| (\w+))?/.exec(id);
  if (!id.startsWith('loop link') && !id.startsWith('closing link')) return names;
  const far = /(\w+)$/.exec(id)?.[1] ?? '';
  const group = side(names.includes(far) ? far : (deck[0] as string));
  return link && yard.return === 'chain' ? group.slice(group.indexOf(far)) : group;
}

/** The roads that share something with a fault: a part of their loop, or a rail that it joins. */
function shares(yard: Yard, fault: Fault): readonly string[] {
  if ('crossed' in fault) return fault.crossed;
  if ('touching' in fault) return fault.touching;
  if ('droppersCrossed' in fault) return [fault.droppersCrossed];
  // A lamp from the track without its resistor is a short, as is a bridge to the return: all roads share the supply.
  if ('lampBare' in fault) return yard.lamps === 'track' ? roads(yard) : [];
  // A short takes the supply's volts from all roads, a link past the switches gives them to all.
  if ('shorted' in fault || 'linkedPast' in fault) return roads(yard);
  if ('bridge' in fault && fault.bridge.some((id) => id.startsWith('plug return')))
    return roads(yard);
  if ('bridge' in fault) return fault.bridge.flatMap((id) => served(yard, id));
  if ('halfHome' in fault)
    return roadsOf(yard).flatMap(({ bed, name }) => (bed === 'deck' ? [name] : []));
  if ('highOhms' in fault) return served(yard, fault.in);
  return served(yard, Object.values(fault)[0] as string);
}

/** A moment without locos of a yard up to 4 + 3, with one of its faults. */
const faulty: fc.Arbitrary<Moment & { readonly fault: Fault }> = anyMoment(
  fc.constantFrom(...yards)
).chain(({ yard, scene }) =>
  fc
    .constantFrom(...faultsOf(yard))
    .map((fault) => ({ yard, scene: { ...scene, locos: {} }, fault }))
);

test(
  'liveRoads(scene): a fault changes no road of whose loop it touches no part',
  { timeout: 300_000 },
  () => {
    let kept = 0;
    fc.assert(
      fc.property(faulty, ({ yard, scene, fault }) => {
        const touched = shares(yard, fault);
        const others = roads(yard).filter((road) => !touched.includes(road));
        const lives = [[], [fault]].map((faults) => {
          const found = liveRoads(yard, { ...scene, faults });
          return others.filter((road) => found.has(road));
        });
        kept += lives[0]?.length ?? 0;
        expect(lives[1]).toEqual(lives[0]);
      }),
      { numRuns: 800, seed: 11 }
    );
    expect(kept).toBeGreaterThan(500);
  }
);

test('apply(scene): a fault leaves no trace in the yard or in the next scene', () => {
  fc.assert(
    fc.property(faulty, ({ yard, scene, fault }) => {
      const before = JSON.stringify(apply(yard, scene));
      apply(yard, { ...scene, faults: [fault] });
      expect(JSON.stringify(apply(yard, { ...scene, faults: [] }))).toBe(before);
    }),
    { numRuns: 300, seed: 12 }
  );
});
