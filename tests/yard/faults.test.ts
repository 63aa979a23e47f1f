import { describe, expect, test } from 'vitest';
import {
  act,
  admit,
  apply,
  BorderError,
  circuitOf,
  faultKinds,
  faultName,
  FaultSchema,
  faultsOf,
  faultWords,
  holes,
  liveRoads,
  read,
  repairWords,
  sceneWords,
  type Fault,
  type Scene,
  type YardInput
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, sceneOf, thrown, yardOf, type SceneInput } from './build';

/** Quay of two storage roads and one stabling road: Q (fed straight), A, B, R, 1. */
const small: YardInput = { deckRoads: 2, stablingRoads: 1 };
const lit: YardInput = { ...small, lamps: 'own' };
/** A quay that can have every kind of fault: its road R is cut in two. */
const any: YardInput = { ...lit, cuts: [{ road: 'R', atMm: 400 }] };
const on = (names: string) => Object.fromEntries([...names].map((name) => [name, true]));

/** The live roads of a small quay, or another yard, with these faults. */
function live(
  faults: Fault | readonly Fault[],
  input: SceneInput,
  yard: YardInput = small
): string {
  const list = [faults].flat() as Fault[];
  const at = moment(yard, { ...input, faults: list });
  return [...liveRoads(at.yard, at.scene)].join('');
}

/** All toggles on, deck pinned at 1 or elsewhere. */
const all = (deck: string, more: SceneInput = {}): SceneInput => ({
  switches: on('ABR1'),
  deck,
  ...more
});

describe('faults, truth from first principles', () => {
  test('the sound yard: a toggle makes its road live, 1 needs the pin home at 1, Q is always live', () => {
    expect(live([], all('1'))).toBe('QABR1');
    expect(live([], all('A'))).toBe('QABR');
    expect(live([], { switches: {}, deck: '1' })).toBe('Q');
  });

  test.each<[Fault, string]>([
    [{ stuckOpen: 'toggle A' }, 'QBR1'],
    [{ stuckOpen: 'plug B' }, 'QAR1'],
    [{ stuckOpen: 'pin contact 1' }, 'QABR'],
    [{ stuckOpen: 'plug return 1' }, 'QABR1'],
    [{ wireOff: 'feed dropper R' }, 'QAB1'],
    [{ wireOff: 'return dropper 1' }, 'QABR'],
    [{ wireOff: 'feed link A-B' }, 'QA'],
    [{ wireOff: 'feed wire' }, ''],
    [{ wireOff: 'return wire' }, '']
  ])('an open place cuts what lies beyond it: %j leaves %s live', (fault, lives) => {
    expect(live(fault, all('1'))).toBe(lives);
  });

  test('two return contacts side by side: one open cuts nothing, both cut the deck', () => {
    const both = [{ stuckOpen: 'plug return 1' }, { stuckOpen: 'plug return 2' }];
    expect(live(both, all('1'))).toBe('Q1');
  });

  test('welded: live whatever the toggle or the pin does, while the rest of its feed is made', () => {
    expect(live({ welded: 'toggle A' }, { switches: {} })).toBe('QA');
    expect(live({ welded: 'toggle A' }, { switches: {}, plug: 'out' })).toBe('Q');
    expect(live({ welded: 'pin contact 1' }, all('A'))).toBe('QABR1');
    expect(live({ welded: 'pin contact 1' }, all('1', { pin: 'out' }))).toBe('QABR1');
    expect(live({ welded: 'pin contact 1' }, { switches: {} })).toBe('Q');
  });

  test.each<['chain' | 'ring' | 'star', string, string]>([
    ['chain', 'loop link B-C', 'AB'],
    ['ring', 'loop link B-C', 'ABCDE'],
    ['ring', 'closing link', 'ABCDE'],
    ['star', 'return wire C', 'ABDE']
  ])('a %s return with the %s broken: %s live', (shape, linkBroken, lives) => {
    const five: YardInput = { deckRoads: 5, return: shape };
    expect(live({ linkBroken }, { switches: on('ABCDE') }, five)).toBe(lives);
  });

  test('a ring survives one break and is cut by two', () => {
    const two = [{ linkBroken: 'loop link A-B' }, { linkBroken: 'loop link C-D' }];
    const five: YardInput = { deckRoads: 5, return: 'ring' };
    expect(live(two, { switches: on('ABCDE') }, five)).toBe('ADE');
  });

  test('crossed at the plug: each toggle works the other road', () => {
    const fault: Fault = { crossed: ['A', 'B'], at: 'plug' };
    expect(live(fault, { switches: on('A') })).toBe('QB');
    expect(live(fault, { switches: on('B') })).toBe('QA');
    expect(live(fault, { switches: on('AB') })).toBe('QAB');
  });

  test('crossed at the tags with a stabling road: the interlock guards the wrong road', () => {
    const fault: Fault = { crossed: ['A', '1'], at: 'tags' };
    expect(live(fault, { switches: on('A'), deck: 'A' })).toBe('Q1');
    expect(live(fault, { switches: on('1'), deck: 'A' })).toBe('Q');
    expect(live(fault, { switches: on('1'), deck: '1' })).toBe('QA');
    expect(live(fault, { switches: on('1'), deck: '1', plug: 'out' })).toBe('Q');
    expect(live(fault, { switches: on('A'), deck: 'A', plug: 'out' })).toBe('Q1');
  });

  test('a bridge: one toggle livens two roads; past the interlock where it joins a deck road to 1', () => {
    for (const kind of ['plug', 'toggle']) {
      const fault: Fault = { bridge: [`${kind} A`, `${kind} B`] };
      expect(live(fault, { switches: on('A') })).toBe('QAB');
      expect(live(fault, { switches: on('B') })).toBe('QAB');
      expect(live(fault, { switches: {} })).toBe('Q');
    }
    expect(live({ bridge: ['toggle R', 'toggle 1'] }, { switches: on('R'), deck: 'A' })).toBe(
      'QR1'
    );
  });

  test('a bridge from the last feed to the return: a short once that toggle is on, none before', () => {
    const faults: Fault[] = [{ bridge: ['plug R', 'plug return 1'] }];
    const reads = (names: string) => {
      const { yard, scene } = moment(small, { switches: on(names), controller: 1, faults });
      return read(yard, scene);
    };
    expect([reads('R').limiting, reads('AB').limiting]).toEqual([true, false]);
    // At its limit a source gives no more than its limit: 1.5 A.
    near(Math.abs(reads('R').amps('controller')), 1.5, { rel: 1e-9 });
  });

  test.each<[number, 'first' | 'last', string]>([
    [1, 'first', 'QBR1'],
    [2, 'first', 'QR1'],
    [4, 'first', 'Q1'],
    [1, 'last', 'QABR1'],
    [2, 'last', 'Q1'],
    [4, 'last', 'Q1']
  ])('plug half home, %d contacts missing at the %s end: %s live', (halfHome, end, lives) => {
    expect(live({ halfHome, end }, all('1'))).toBe(lives);
  });

  test('an early pin contact: 1 is live over its hole with the pin out, and nowhere else', () => {
    const fault: Fault = { early: 'pin contact 1' };
    expect(live(fault, all('1', { pin: 'out' }))).toBe('QABR1');
    expect(live(fault, all('1'))).toBe('QABR1');
    expect(live(fault, all('A'))).toBe('QABR');
    const off = holes(yardOf(small)).find(({ name }) => name === '1')?.deckMm ?? NaN;
    expect(live(fault, { switches: on('ABR1'), deck: off + 1, pin: 'out' })).toBe('QABR');
  });

  test('COM and NC: 1 is live with the pin out or in another hole, dead with it home', () => {
    const fault: Fault = { comNc: 'pin contact 1' };
    expect(live(fault, all('1', { pin: 'out' }))).toBe('QABR1');
    expect(live(fault, all('A'))).toBe('QABR1');
    expect(live(fault, all('1'))).toBe('QABR');
    expect(live(fault, { switches: on('ABR'), deck: 'A' })).toBe('QABR');
  });

  test('a bad joint: without load no volts are lost, a held loco gets its share of R/(R + joint)', () => {
    const one = { deckRoads: 1, supply: { ohms: 0 }, wires: {} };
    const input = (highOhms: number): SceneInput => ({
      switches: on('A'),
      controller: 1,
      faults: [{ highOhms, in: 'feed dropper A' }]
    });
    const volts = (highOhms: number, locos: SceneInput['locos']) => {
      const { yard, scene } = moment(one, { ...input(highOhms), locos });
      return read(yard, scene).between('feed rail A', 'return rail A');
    };
    near(volts(200, {}), 12, { rel: 1e-9 });
    expect(live({ highOhms: 200, in: 'feed dropper A' }, { switches: on('A') }, one)).toBe('');
    near(volts(200, { Plover: 'A' }), (12 * 20) / 220, { rel: 2e-3 });
    near(volts(10, { Plover: 'A' }), (12 * 20) / 30, { rel: 1e-2 });
    expect(live({ highOhms: 10, in: 'feed dropper A' }, { switches: on('A') }, one)).toBe('A');
  });

  test('touching rails: the deck road is live with its toggle off, only where the two face', () => {
    const fault: Fault = { touching: ['Q', 'A'] };
    expect(live(fault, { deck: 'A' })).toBe('QA');
    expect(live(fault, { deck: 'A', pin: 'out' })).toBe('QA');
    expect(live(fault, { deck: 'B' })).toBe('Q');
    expect(live({ touching: ['1', 'R'] }, { deck: '1', pin: 'out', switches: on('R') })).toBe(
      'QR1'
    );
  });

  test('crossed droppers: the road turns round, is live still, and shorts across the joint', () => {
    const faults: Fault[] = [{ droppersCrossed: 'A' }];
    const volts = (more: Fault[]) => {
      const { yard, scene } = moment(small, { switches: on('A'), controller: 1, faults: more });
      return read(yard, scene).between('feed rail A', 'return rail A');
    };
    near(volts(faults), -(volts([]) ?? NaN), { rel: 1e-9 });
    expect(live(faults, { switches: on('A') })).toBe('QA');
    const across = { Plover: { road: 'A', atMm: 0 } };
    const limits = [faults, []].map((each) => {
      const input = { switches: on('A'), controller: 1, locos: across, faults: each };
      const { yard, scene } = moment(small, input);
      return read(yard, scene).limiting;
    });
    expect(limits).toEqual([true, false]);
  });
});

describe('metal where none belongs', () => {
  const reads = (input: YardInput, names: string, faults: Fault[], more: SceneInput = {}) => {
    const { yard, scene } = moment(input, { switches: on(names), controller: 1, faults, ...more });
    return read(yard, scene);
  };

  test('across the rails of a road: a short once its toggle is on, by Ohm’s law of what lies on the way', () => {
    const faults: Fault[] = [{ shorted: 'A' }];
    expect([reads(small, 'A', faults), reads(small, 'BR', faults)].map((r) => r.limiting)).toEqual([
      true,
      false
    ]);
    near(Math.abs(reads(small, 'A', faults).amps('controller')), 1.5, { rel: 1e-9 });
    // Everything dies with it: the limit drives its 1.5 A through the metal, which keeps next to no volts.
    expect(live(faults, { switches: on('AB') })).toBe('');
    expect(live(faults, { switches: on('B') })).toBe('QB');
    expect(live({ shorted: 'Q' }, { switches: {} })).toBe('');
  });

  test('a feed linked past the switches: every road is live with all off, stabling with the pin out', () => {
    const fault: Fault = { linkedPast: 'feed' };
    for (const switching of ['toggles', 'rotary', 'pushes'] as const) {
      const yard = { ...small, switching };
      expect(live(fault, { pin: 'out' }, yard)).toBe('QABR1');
      expect(live(fault, { pin: 'out', plug: 'out' }, yard)).toBe('Q1');
    }
  });

  test('of two controllers only the roads of the one whose feed is linked', () => {
    const two: YardInput = { ...small, second: { roads: ['R', '1'] } };
    const lives = (fault: Fault) => live(fault, { pin: 'out' }, two);
    expect(lives({ linkedPast: 'feed' })).toBe('QAB');
    expect(lives({ linkedPast: 'feed 2' })).toBe('QR1');
  });

  test('a joiner left in the gap of a cut road: either switch feeds both sections', () => {
    const cut: YardInput = { ...small, cuts: [{ road: 'R', atMm: 400 }] };
    const switches = { R1: true };
    expect(live([], { switches }, cut)).toBe('QR1');
    expect(live({ joined: ['R1', 'R2'] }, { switches }, cut)).toBe('QR1R2');
    expect(live({ joined: ['R1', 'R2'] }, { switches: { R2: true } }, cut)).toBe('QR1R2');
    expect(
      faultsOf(yardOf({ ...small, cuts: [{ road: 'R', atMm: 400, rail: 'return' }] })).filter(
        (fault) => 'joined' in fault
      )
    ).toEqual([]);
  });
});

describe('faults of panel lamps', () => {
  const amps = (...faults: Fault[]) => {
    const { yard, scene } = moment(lit, { switches: on('A'), faults });
    const found = read(yard, scene);
    return { amps: found.amps('lamp A'), lamp: found.lamp('A'), supply: found.amps('lamp supply') };
  };

  test('an LED the wrong way round passes next to nothing, and is dark', () => {
    expect(amps().lamp).toBe('lit');
    expect(amps({ lampReversed: 'lamp A' }).lamp).toBe('dark');
    near(amps({ lampReversed: 'lamp A' }).amps, 0, { abs: 1e-9 });
  });

  test('without its resistor an LED takes all that its supply gives: 1 A for some 10 mA', () => {
    expect(amps().amps).toBeLessThan(0.012);
    near(amps({ lampBare: 'lamp A' }).amps, 1, { rel: 1e-6 });
  });
});

describe.each(faultKinds.map((kind) => ({ key: kind.key, kind })))(
  'fault kind $key',
  ({ kind }) => {
    const example = admit('fault', FaultSchema, kind.example);

    test('admit(FaultSchema): its example is a fault of a cut quay, told in words', () => {
      expect(example).toEqual(kind.example);
      expect(faultsOf(yardOf(any)).map(faultName)).toContain(faultName(example));
      expect(faultWords(example)).toMatch(/^[a-z].* (is|are|never|makes|touch|bridges|has) ?/);
      expect(repairWords(example)).toMatch(
        /^(clean|fit|solder|exchange|take|push|set|move|open|put) /
      );
    });

    test('fit(scene): a place that is not there is refused with those that are', () => {
      const bare = yardOf({ deckRoads: 1, stablingRoads: 0, switching: 'none' });
      const wrong = JSON.parse(
        JSON.stringify(kind.example).replaceAll(/\bA\b/g, 'Z').replaceAll(' 1"', ' 9"')
      ) as Fault;
      const error = thrown(() => sceneOf(bare, { faults: [wrong] }));
      expect(error).toBeInstanceOf(BorderError);
      expect((error as BorderError).message).toMatch(
        /^scene › faults › 0: met \{.*\}, allowed: .+\.$/
      );
    });

    test('apply(scene): it changes the circuit at some stop, and leaves it when it leaves the list', () => {
      const yard = yardOf(any);
      const json = (scene: Scene) => JSON.stringify(circuitOf(yard, scene));
      const changed = holes(yard).filter(({ name }) =>
        [true, false].some((A) => {
          const sound = sceneOf(yard, { deck: name, pin: 'out', switches: { A } });
          const faulty = act(yard, sound, { faults: [example] });
          expect(act(yard, faulty, { faults: [] })).toEqual(sound);
          expect(apply(yard, { ...faulty, faults: [] })).toEqual(apply(yard, sound));
          return json(faulty) !== json(sound);
        })
      );
      expect(changed).not.toEqual([]);
    });
  }
);

test('fit(scene): the same fault twice is refused, whatever its ohms', () => {
  const faults: Fault[] = [
    { highOhms: 200, in: 'toggle A' },
    { highOhms: 5, in: 'toggle A' }
  ];
  expect(() => sceneOf(yardOf(small), { faults })).toThrow(
    'scene › faults › 1: met {"highOhms":5,"in":"toggle A"} a second time, allowed: each fault once.'
  );
});

test('faults stand under wire edits: metal across a stuck toggle feeds its road', () => {
  const input = { switches: on('A'), edits: [{ metal: 'toggle A' }] };
  expect(live({ stuckOpen: 'toggle A' }, input)).toBe('QA');
  const bridged = { switches: on('A'), edits: [{ resistor: 1, in: 'toggle A' }] };
  expect(live({ bridge: ['toggle A', 'toggle B'] }, bridged)).toBe('QAB');
});

test('sceneWords(scene): tells no fault', () => {
  const yard = yardOf(small);
  const words = [[], [{ stuckOpen: 'toggle A' }]].map((faults) =>
    sceneWords(yard, sceneOf(yard, { faults }))
  );
  expect(words[0]).toBe(words[1]);
});
