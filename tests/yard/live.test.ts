import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groups } from '../../src/lib/circuit';
import {
  circuitOf,
  deckRoads,
  editKinds,
  holes,
  liveRoads,
  roads,
  roadsOf,
  toggleRoads,
  type Edit,
  type Road
} from '../../src/lib/yard';
import { moment, type Moment } from './build';
import { anyMoment, anyYard, toggledYard } from './random';

const live = (...args: Parameters<typeof moment>): string[] => {
  const { yard, scene } = moment(...args);
  return [...liveRoads(yard, scene)];
};

describe('liveRoads(scene)', () => {
  test('a toggle makes its own road live and no other', () => {
    const four = { deckRoads: 4 };
    expect(live(four)).toEqual([]);
    expect(live(four, { switches: { B: 'on' } })).toEqual(['B']);
    expect(live(four, { switches: { A: 'on', D: 'on' } })).toEqual(['A', 'D']);
    expect(live(four, { switches: { A: 'on', D: 'off' } })).toEqual(['A']);
  });

  test('without toggles every road is live; so is the running road, whatever the toggles', () => {
    expect(live({ deckRoads: 3, switching: 'none' })).toEqual(['A', 'B', 'C']);
    expect(live({ deckRoads: 3, runningRoad: true }, { switches: { C: 'on' } })).toEqual([
      'Q',
      'C'
    ]);
  });

  test('the knob does not matter: live is what would be at full', () => {
    const all = (['centre', '10% west', '100% east'] as const).map((controller) =>
      live({ deckRoads: 2 }, { switches: { B: 'on' }, controller })
    );
    expect(all).toEqual([['B'], ['B'], ['B']]);
  });

  test.each<[string, Edit[], string[]]>([
    ['a lost dropper', [{ off: 'return dropper B' }], ['A', 'C']],
    ['a lost link', [{ off: 'loop link A-B' }], ['A']],
    ['a lost return wire', [{ off: 'return wire' }], []],
    ['both droppers on the feed', [{ move: 'return dropper C', to: 'feed' }], ['A', 'B']],
    ['a resistor too big to start a loco', [{ resistor: 100, in: 'feed dropper A' }], ['B', 'C']],
    ['a resistor small enough', [{ resistor: 10, in: 'feed dropper A' }], ['A', 'B', 'C']]
  ])('%s', (_, edits, expected) => {
    const switches = { A: true, B: true, C: true };
    expect(live({ deckRoads: 3 }, { switches, edits })).toEqual(expected);
  });

  test('asks the loco that stands there: what starts Plover need not start Avocet', () => {
    const weak = { deckRoads: 2, supply: { volts: 4.5 } };
    const switches = { A: true, B: true };
    expect(live(weak, { switches, locos: { Avocet: 'A' } })).toEqual(['B']);
    expect(live(weak, { switches, locos: { Plover: 'A' } })).toEqual(['A', 'B']);
  });

  test('a loco is asked as if held: its own speed makes no road live', () => {
    const coasting = { Plover: { road: 'A', speed: 0.25 }, Heron: { road: 'B', speed: -0.2 } };
    expect(live({ deckRoads: 2 }, { locos: coasting, switches: { B: true } })).toEqual(['B']);
    const thin: Edit[] = [{ resistor: 50, in: 'feed dropper A' }];
    expect(live({ deckRoads: 1 }, { switches: { A: true }, edits: thin })).toEqual([]);
    const running = { Plover: { road: 'A', speed: 0.1 } };
    expect(live({ deckRoads: 1 }, { locos: running, switches: { A: true }, edits: thin })).toEqual(
      []
    );
  });
});

describe('liveRoads(scene), Quillby Quay', () => {
  const quay = { deckRoads: 5, stablingRoads: 4 };
  const all = Object.fromEntries([...'ABCDER1234'].map((road) => [road, true]));

  test('a loco in the gap is asked no more: its road is as live as an empty one', () => {
    const edits: Edit[] = [{ resistor: 200, in: 'feed dropper C' }];
    const input = { deck: -140, switches: all, edits };
    const fallen = { road: 'C', atMm: 1185, fallen: true };
    expect(live(quay, input)).not.toContain('C');
    expect(live(quay, { ...input, locos: { Avocet: fallen } })).toEqual(live(quay, input));
  });

  test('where a running stop and a stabling stop are one place, the pin makes both contacts', () => {
    const yard = { ...quay, stablingFromMm: 75, runningRoad: 'interlocked' as const };
    const input = { deck: -240, switches: { ...all, Q: true } };
    const names = ['Q', 'A', 'B', 'C', 'D', 'E', 'R'];
    expect(live(yard, { ...input, pin: 'out' })).toEqual(names.slice(1));
    expect(live(yard, { ...input, pin: 'home' })).toEqual([...names, '1']);
  });
});

const runs = { numRuns: 80, seed: 7 };

/** Whether each contact in a road's feed is made; a road without any is always fed. */
function isFed({ yard, scene }: Moment, { name, kind, bed }: Road): boolean {
  const toggled = !toggleRoads(yard).includes(name) || scene.switches[name] === true;
  const plugged = bed !== 'deck' || yard.plug === false || scene.plug === 'in';
  const pinned =
    scene.pin === 'home' &&
    holes(yard).some(
      ({ fixed, deckMm }) => fixed === name && Math.abs(deckMm - scene.deck) <= yard.toleranceMm
    );
  const interlocked =
    kind === 'stabling' || (kind === 'running' && yard.runningRoad === 'interlocked');
  return toggled && plugged && (!interlocked || pinned);
}

/** Whether conductors alone join both rails to their own terminals, worked out without the trace. */
function wholeByWires({ yard, scene }: Moment, road: string): boolean {
  const joins = groups(
    circuitOf(yard, scene),
    (each) => each.kind === 'resistor' || (each.kind === 'switch' && each.closed)
  );
  return joins.joined('feed', `feed rail ${road}`) && joins.joined('return', `return rail ${road}`);
}

/** Up to three edits, each of a kind's example put on any road of the yard. */
const withEdits = (moments: fc.Arbitrary<Moment>): fc.Arbitrary<Moment> =>
  moments.chain(({ yard, scene }) =>
    fc
      .uniqueArray(
        fc.tuple(
          fc.constantFrom(...editKinds.filter(({ key }) => ['off', 'metal', 'move'].includes(key))),
          fc.constantFrom(...deckRoads(yard))
        ),
        { maxLength: 3, selector: ([kind, road]) => kind.key + road }
      )
      .map((picked) => {
        const edits = picked
          .filter(([kind]) => yard.switching === 'toggles' || kind.key !== 'metal')
          .map(([kind, road]) => JSON.parse(relettered(kind.example, road)) as Edit);
        return { yard, scene: { ...scene, edits } };
      })
  );

const relettered = (example: unknown, road: string): string =>
  JSON.stringify(example).replace(/ A"/g, ` ${road}"`);

describe('liveRoads(scene), any yard', () => {
  test('a road whose toggle is open is dead; one whose toggle is closed is live', () => {
    fc.assert(
      fc.property(anyMoment(toggledYard), ({ yard, scene }) => {
        const found = liveRoads(yard, scene);
        for (const road of roads(yard)) {
          expect(found.has(road)).toBe(scene.switches[road] === true);
        }
      }),
      runs
    );
  });

  test('a road is live in a sound yard unless a toggle, a pin contact or the plug cuts it', () => {
    fc.assert(
      fc.property(anyMoment(anyYard), ({ yard, scene }) => {
        const found = liveRoads(yard, scene);
        for (const road of roadsOf(yard)) {
          expect(found.has(road.name)).toBe(isFed({ yard, scene }, road));
        }
      }),
      runs
    );
  });

  test('with wires off, metal laid and droppers moved: live only where wires join both rails', () => {
    fc.assert(
      fc.property(withEdits(anyMoment(anyYard)), (at) => {
        const found = liveRoads(at.yard, at.scene);
        for (const road of roads(at.yard)) {
          expect(found.has(road)).toBe(wholeByWires(at, road));
        }
      }),
      runs
    );
  });
});
