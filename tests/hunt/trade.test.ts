import { describe, expect, test } from 'vitest';
import {
  beyondWires,
  misleads,
  nextTest,
  outcomes,
  suspectsOf,
  testsOf,
  type Suspect
} from '../../src/lib/hunt';
import { symptomsIn, symptomWords, type Yard } from '../../src/lib/yard';
import { yardOf } from '../yard/build';
import { follow, isNamed } from './drive';

const yards = {
  quay: yardOf({ deckRoads: 2, stablingRoads: 1, lamps: 'own' }),
  deck: yardOf({ deckRoads: 3 }),
  cut: yardOf({ deckRoads: 2, stablingRoads: 1, cuts: [{ road: 'B', atMm: 400 }] }),
  two: yardOf({ deckRoads: 2, stablingRoads: 1, second: { roads: ['1'] } })
} as const;
type Where = keyof typeof yards;

const suspectIn = (yard: Yard, name: string): Suspect => {
  const found = suspectsOf(yard).find((suspect) => suspect.name === name);
  if (!found) throw new Error(`No '${name}' in this yard.`);
  return found;
};

/** What is seen, in which yard, the fault of the catalogue that stands for the cause, and its symptoms. */
const electrical: readonly (readonly [string, Where, string, RegExp])[] = [
  ['one road is dead', 'quay', 'wireOff: feed dropper B', /^Road B stays dead/],
  ['one road is dead: its toggle', 'quay', 'stuckOpen: toggle B', /^Road B stays dead/],
  ['the whole deck is dead', 'quay', 'linkBroken: deck return', /^Roads A, B and R stay dead/],
  ['far roads are dead', 'deck', 'linkBroken: loop link B-C', /^Road C stays dead/],
  ['two toggles are exchanged', 'quay', 'crossed: A and B at the plug', /live when only road A/],
  ['one toggle livens two roads', 'quay', 'bridge: plug A and plug B', /live when only road A/],
  ['a short with one toggle', 'quay', 'bridge: plug R and plug return 1', /limit once road R/],
  ['a short at the joint', 'quay', 'droppersCrossed: R', /limit while wheels stand on/],
  ['a road is live when faced', 'quay', 'touching: A and Q', /Road A is live .* deck is at A/],
  ['a trip as soon as one toggle is on', 'quay', 'shorted: B', /limit once road B/],
  ['all roads live whatever the toggles', 'quay', 'linkedPast: feed', /^Roads A, B, R and 1 are/],
  ['all live: the joiner in a gap is metal', 'cut', 'joined: B1 and B2', /live when only road B/],
  ['a loco runs the wrong way', 'deck', 'droppersCrossed: B', /the wrong way on road B/],
  ['live with the pin out, dead home', 'quay', 'comNc: pin contact 1', /pin out\..* stays dead/],
  [
    'live before the pin is home',
    'quay',
    'early: pin contact 1',
    /^Road 1 is live with the pin out/
  ],
  ['live though not locked', 'quay', 'welded: pin contact 1', /^Road 1 is live with the pin out/],
  ['dead with the pin home', 'quay', 'stuckOpen: pin contact 1', /^Road 1 stays dead/],
  ['slow or stalled', 'quay', 'highOhms: return dropper B', /^Road B stays dead/],
  ['12 V on the meter, no movement', 'quay', 'highOhms: feed dropper A', /^Road A stays dead/],
  ['a plug half home', 'quay', 'halfHome: the first 2 of the plug', /^Roads A and B stay dead/],
  ['a poor sliding contact', 'quay', 'highOhms: plug B', /^Road B stays dead/],
  ['a panel lamp is dark', 'quay', 'lampReversed: lamp A', /^Lamp A stays dark/],
  ['a panel lamp burns out', 'quay', 'lampBare: lamp A', /^Lamp A flashes up/],
  [
    'two controllers, their common return open',
    'two',
    'wireOff: return wire',
    /^Roads Q, A, B, R and 1/
  ],
  ['a switch that never opens', 'quay', 'welded: toggle B', /^Road B is live with every switch off/]
];

describe('from the symptom to the cause by following the advice', () => {
  test.each(electrical)('%s (%s): %s', (_, where, name, symptoms) => {
    const yard = yards[where];
    const suspect = suspectIn(yard, name);
    expect(suspect.fault && symptomWords(symptomsIn(yard)(suspect.fault))).toMatch(symptoms);
    const hunt = follow(yard, suspect, { seed: 1, wrong: 0 });
    expect(isNamed(hunt, suspect), `after ${hunt.told.length} tests`).toBe(true);
    expect(nextTest(hunt)).toBeUndefined();
    expect(suspect.repair).not.toBe('');
  });
});

const showing = (yard: Yard, id: string, suspect: Suspect): string => {
  const found = testsOf(yard).find((each) => each.id.startsWith(id));
  if (!found) throw new Error(`No test '${id}'.`);
  const [[shares = []] = []] = outcomes(yard, [found], [suspect]);
  return found.outcomes[shares.indexOf(Math.max(...shares))]?.id ?? '';
};

describe('readings that mislead are told', () => {
  const { quay } = yards;
  const told = (id: string, outcome: string) => {
    const found = testsOf(quay).find((each) => each.id.startsWith(id));
    return found && misleads(found, outcome);
  };

  test('a bad joint: full volts on the meter, a dark lamp, and the meter says so', () => {
    const suspect = suspectIn(quay, 'highOhms: feed dropper A');
    expect(showing(quay, 'volts feed rail A to return, own A', suspect)).toBe('full');
    expect(showing(quay, 'lamp feed rail A to return, own A', suspect)).toBe('dark');
    expect(told('volts feed rail A to return, own A', 'full')).toMatch(/test lamp/);
  });

  test('a lit panel lamp over a dead road is as built', () => {
    const suspect = suspectIn(quay, 'wireOff: feed dropper A');
    expect(showing(quay, 'panel lamp A', suspect)).toBe('lit');
    expect(showing(quay, 'run A, own A', suspect)).toBe('still');
    expect(told('panel lamp A', 'lit')).toMatch(/its switch, not the rail/);
  });

  test('ghost volts, stock left on a road, a floating rail', () => {
    expect(told('volts feed rail A to return, own A', 'some')).toMatch(/ghost volts/);
    expect(told('ohms feed rail A to return rail A', 'buzz')).toMatch(/Lift all stock off/);
    expect(told('volts feed rail A to return rail A, own A', 'none')).toMatch(/floats/);
    expect(told('lamp feed rail A to return, own A', 'bright')).toBeUndefined();
  });
});

test('a ring hides its first break: no test of a hunt tells it from a sound yard, and the words say what to do', () => {
  const ring = yardOf({ deckRoads: 3, return: 'ring' });
  const suspect = suspectIn(ring, 'linkBroken: loop link A-B');
  const hunt = follow(ring, suspect, { seed: 1, wrong: 0 });
  expect(isNamed(hunt, suspect)).toBe(true);
  expect(isNamed(hunt, suspectIn(ring, 'sound'))).toBe(true);
});

/** What no test of the wiring finds: a ring's first break and all that is not electrical, or no fault of one wire. */
test.each([
  ['a ring already broken', 'ring', /buzzer/],
  ['a deck that turns', 'turned', /reversing switch/],
  ['stock across a gap', 'stock across', /Push all stock clear/],
  ['a gap in the wrong rail', 'wrong rail', /belongs in the feed rail/],
  ['two switches on', 'two on', /Switch everything off/],
  ['it cuts out when the deck is leant on', 'shakes', /Rock the deck/],
  ['a loco runs into the well', 'runs in', /gap proof/],
  ['it comes and goes as the deck moves', 'moves', /bend the lead/],
  ['lamp lit, road dead', 'lamp shows switch', /as it was built/],
  ['a lamp that dims with the knob', 'lamp follows knob', /supply of their own/],
  ['two controllers on one supply', 'shared supply', /a supply of its own/],
  ['a warm wire', 'warm', /unplug at once/],
  ['a rotary that kicks', 'rotary kicks', /breaks before it makes/],
  ['a motor that buzzes at the stop', 'buzzes', /dead length/],
  ['a diode section', 'diode', /wrong way round/],
  ['a derailment at the edge', 'derails', /straight-edge/],
  ['fine at home, not at the show', 'away', /own socket/],
  ['ghost volts', 'ghost', /test lamp/],
  ['stock left on the rails', 'stock left', /Lift it all off/]
])('%s: what to look at instead', (_, id, look) => {
  const all = beyondWires.filter((each) => each.id === id);
  expect(all.map((each) => each.look)).toEqual([expect.stringMatching(look)]);
});
