import { describe, expect, test } from 'vitest';
import {
  act,
  faultName,
  faultsOf,
  faultWords,
  holes,
  liveRoads,
  read,
  symptomsIn,
  symptomWords,
  toggleRoads,
  type Fault,
  type Symptom,
  type Yard
} from '../../src/lib/yard';
import { sceneOf, yardOf, type SceneInput } from './build';

const quay = yardOf({ deckRoads: 2, stablingRoads: 1 });
const says = (yard: Yard, fault: Fault) => symptomWords(symptomsIn(yard)(fault));

test.each<[Fault, string]>([
  [{ stuckOpen: 'toggle A' }, 'Road A stays dead when switched on.'],
  [{ stuckOpen: 'plug return 1' }, 'Nothing shows.'],
  [{ welded: 'toggle B' }, 'Road B is live with every switch off.'],
  [{ welded: 'pin contact 1' }, 'Road 1 is live with the pin out.'],
  [{ wireOff: 'feed link A-B' }, 'Roads B, R and 1 stay dead when switched on.'],
  [{ linkBroken: 'deck return' }, 'Roads A, B and R stay dead when switched on.'],
  [
    { crossed: ['A', 'B'], at: 'plug' },
    'Roads A and B stay dead when switched on. Road B is live when only road A is switched on. Road A is live when only road B is switched on.'
  ],
  [
    { bridge: ['plug R', 'plug return 1'] },
    'The controller is at its limit once road R is switched on.'
  ],
  [{ halfHome: 2, end: 'first' }, 'Roads A and B stay dead when switched on.'],
  [{ early: 'pin contact 1' }, 'Road 1 is live with the pin out while the deck is at 1.'],
  [
    { comNc: 'pin contact 1' },
    'Road 1 is live with the pin out. Road 1 stays dead when switched on.'
  ],
  [{ highOhms: 10, in: 'feed dropper A' }, 'Locos are slow on road A.'],
  [{ touching: ['Q', 'A'] }, 'Road A is live with every switch off while the deck is at A.'],
  [{ shorted: 'A' }, 'The controller is at its limit once road A is switched on.'],
  [{ shorted: 'Q' }, 'The controller is at its limit whatever is switched on.'],
  [
    { linkedPast: 'feed' },
    'Roads A, B, R and 1 are live with every switch off. Road 1 is live with the pin out.'
  ],
  [
    { droppersCrossed: 'R' },
    'Locos run the wrong way on road R. The controller is at its limit while wheels stand on roads Q and R or 1 and R.'
  ]
])('%j: %s', (fault, words) => {
  expect(says(quay, fault)).toBe(words);
});

test('symptomsIn(yard): a ring hides one break, a chain shows it', () => {
  const broken = { linkBroken: 'loop link A-B' };
  expect(says(yardOf({ deckRoads: 3, return: 'ring' }), broken)).toBe('Nothing shows.');
  expect(says(yardOf({ deckRoads: 3 }), broken)).toBe('Roads B and C stay dead when switched on.');
  expect(says(yardOf({ deckRoads: 3 }), { welded: 'toggle B' })).toBe(
    'Road B is live with every switch off.'
  );
});

test.each<['own' | 'track', Fault, string]>([
  ['own', { lampReversed: 'lamp B' }, 'Lamp B stays dark when switched on.'],
  ['own', { wireOff: 'lamp wire A' }, 'Lamp A stays dark when switched on.'],
  ['own', { lampBare: 'lamp A' }, 'Lamp A flashes up and burns out when switched on.'],
  ['own', { wireOff: 'feed dropper A' }, 'Road A stays dead when switched on.'],
  ['track', { lampReversed: 'lamp A' }, 'Lamp A stays dark when switched on.'],
  [
    'track',
    { stuckOpen: 'toggle A' },
    'Road A stays dead when switched on. Lamp A stays dark when switched on.'
  ]
])('a yard with lamps of their %s: %j: %s', (lamps, fault, words) => {
  expect(says(yardOf({ deckRoads: 2, lamps }), fault)).toBe(words);
});

test.each<['rotary' | 'pushes', Fault, string]>([
  ['rotary', { stuckOpen: 'selector A' }, 'Road A stays dead when switched on.'],
  ['rotary', { welded: 'selector A' }, 'Road A is live with every switch off.'],
  [
    'rotary',
    { comNc: 'pin contact 1' },
    'Road 1 is live with the pin out. Road 1 stays dead when switched on.'
  ],
  ['pushes', { stuckOpen: 'push A' }, 'Road A stays dead when switched on.'],
  [
    'pushes',
    { bridge: ['push A', 'push B'] },
    'Road B is live when only road A is switched on. Road A is live when only road B is switched on.'
  ]
])('%s: %j: %s', (switching, fault, words) => {
  expect(says(yardOf({ deckRoads: 2, stablingRoads: 1, switching }), fault)).toBe(words);
});

/** Whether a scene, as a lesson would write it, shows the symptom at a stop; hands do the rest. */
function shown(yard: Yard, fault: Fault, symptom: Symptom, stop: string | undefined): boolean {
  const { kind, road = '', other = '' } = symptom;
  const toggles = toggleRoads(yard);
  const on = {
    'live off': [],
    follows: [other],
    'live unpinned': toggles,
    'short across': [road, other]
  };
  const names = kind in on ? on[kind as keyof typeof on] : [road];
  const locos: SceneInput['locos'] =
    kind === 'short across'
      ? { Heron: { road: other, atMm: road === 'Q' ? 0 : yard.roadLengthMm } }
      : {};
  const sound = sceneOf(yard, {
    controller: 1,
    ...(stop !== undefined && { deck: stop }),
    ...(kind === 'live unpinned' && { pin: 'out' }),
    switches: Object.fromEntries(toggles.map((name) => [name, names.includes(name)])),
    locos
  });
  const scene = act(yard, sound, { faults: [fault] });
  const volts = (at: typeof scene) =>
    read(yard, {
      ...at,
      locos: { Plover: { road, atMm: 500, faces: 'east', speed: 0, fallen: false } }
    }).between(`feed rail ${road}`, `return rail ${road}`) ?? 0;
  const [was, is] = [liveRoads(yard, sound).has(road), liveRoads(yard, scene).has(road)];
  switch (kind) {
    case 'dead':
      return was && !is;
    case 'slow':
      return is && Math.abs(volts(scene)) < Math.abs(volts(sound)) - 1;
    case 'backwards':
      return is && volts(scene) * volts(sound) < 0;
    case 'short':
    case 'short across':
      return read(yard, scene).limiting && !read(yard, sound).limiting;
    default:
      return is && !was;
  }
}

describe.each([
  { deckRoads: 2, stablingRoads: 1 },
  { deckRoads: 3 },
  { deckRoads: 2, stablingRoads: 2, runningRoad: 'interlocked' as const, return: 'ring' as const },
  { deckRoads: 2, stablingRoads: 1, switching: 'none' as const },
  { deckRoads: 2, stablingRoads: 1, return: 'star' as const }
])('symptomsIn(yard), yard %j', (input) => {
  const yard = yardOf(input);
  const ask = symptomsIn(yard);
  const stops = holes(yard).map(({ name }) => name);

  test('each symptom of each fault is there for hands that look', () => {
    const wrong = faultsOf(yard).flatMap((fault) =>
      ask(fault).flatMap((symptom) => {
        const at = symptom.at ?? (stops.length > 0 ? stops : [undefined]);
        const seen = at.map((stop) => shown(yard, fault, symptom, stop));
        const everywhere = symptom.at !== undefined || symptom.kind.startsWith('live');
        const good = everywhere ? seen.every(Boolean) : seen.some(Boolean);
        return good ? [] : [`${faultWords(fault)}: ${JSON.stringify(symptom)}`];
      })
    );
    expect(wrong).toEqual([]);
  });

  test('a fault without symptoms has another way beside it, or switches nothing', () => {
    const silent = faultsOf(yard).filter((fault) => ask(fault).length === 0);
    const reasons =
      /^(stuckOpen|highOhms): plug return|^halfHome: the last 1 |^(linkBroken|highOhms): (loop|closing) link|^(linkBroken|highOhms): deck return|^(wireOff|highOhms): return wire$/;
    const switchless = /^(crossed|bridge|touching): /;
    expect(
      silent
        .map(faultName)
        .filter(
          (name) => !reasons.test(name) && !(switchless.test(name) && yard.switching === 'none')
        )
    ).toEqual([]);
  });
});
