import { roadScene } from '../checks';
import {
  facing,
  fit,
  isOn,
  meterVoltsText,
  ohmsText,
  pointName,
  read,
  roadsOf,
  switchedRoads,
  type Edit,
  type Road,
  type Scene,
  type Yard
} from '../yard';
import type { Sheet, Table } from './sheet';

type Pair = readonly [string, string];

/** One line of the card: what hands set, where the probes go, and what the engine then reads. */
export interface TestLine {
  readonly set: string;
  readonly probes: Pair;
  readonly scene: Scene;
  /** Ohms with the supply unplugged, or volts with a test lamp beside the meter. */
  readonly unit: 'Ω' | 'V';
}

const held = (unit: TestLine['unit'], [a, b]: Pair): readonly Edit[] =>
  unit === 'Ω' ? [{ ohms: [a, b] }] : [{ testLamp: [a, b] }, { volts: [a, b] }];

/** What a line's meter reads in a yard, faults of its scene included. */
export function reads(yard: Yard, { unit, probes, scene }: TestLine): number {
  const reading = read(yard, { ...scene, edits: [...scene.edits, ...held(unit, probes)] });
  return unit === 'Ω' ? (reading.ohms ?? Infinity) : (reading.volts('meter volts') ?? 0);
}

/** A yard with one road ready to be live: its switch on, the pin home where its feed asks for it. */
const ready = (yard: Yard, road: string): Scene => roadScene({ yard, roads: [road] });

/** The same with every switch off. */
const off = (yard: Yard, scene: Scene): Scene =>
  fit('scene', yard, { ...scene, switches: {}, selector: 'off' });

const unplugged = (scene: Scene): Scene => ({ ...scene, supply: 'off' });

const railsOf = (road: string): Pair => [`feed rail ${road}`, `return rail ${road}`];

/** Dead tests of a road: its return goes home, its feed comes through, and nothing joins the two. */
function deadLines(yard: Yard, road: string): readonly TestLine[] {
  const on = unplugged(ready(yard, road));
  const none = unplugged(off(yard, on));
  const line = (set: string, scene: Scene, probes: Pair): TestLine => ({
    set,
    scene,
    probes,
    unit: 'Ω'
  });
  const hasSwitch = switchedRoads(yard).includes(road);
  return [
    line(`${road} on`, on, ['return', `return rail ${road}`]),
    line(`${road} on`, on, ['feed', `feed rail ${road}`]),
    ...(hasSwitch ? [line('all off', none, ['feed', `feed rail ${road}`])] : []),
    line(`${road} on`, on, railsOf(road))
  ];
}

/** A road under power: live when all is as it should be, dead when one thing is not. */
function liveLines(yard: Yard, road: Road): readonly TestLine[] {
  const { name } = road;
  const on = ready(yard, name);
  const line = (set: string, scene: Scene): TestLine => ({
    set,
    scene,
    probes: railsOf(name),
    unit: 'V'
  });
  return [
    line(`${name} on`, on),
    ...(isOn(yard, on, name) && switchedRoads(yard).includes(name)
      ? [line('all off', off(yard, on))]
      : []),
    ...(road.bed === 'deck' && yard.plug
      ? [line(`${name} on, plug out`, { ...on, plug: 'out' })]
      : []),
    ...(road.bed !== 'deck' && on.pin === 'home'
      ? [line(`${name} on, pin out`, { ...on, pin: 'out' })]
      : []),
    ...others(yard, name).map((other) => line(`${other} on, ${name} off`, ready(yard, other)))
  ];
}

/** The neighbour on the panel and on the plug: its switch must not feed this road. */
function others(yard: Yard, road: string): readonly string[] {
  const all = switchedRoads(yard);
  return all.slice(all.indexOf(road) + 1).slice(0, all.includes(road) ? 1 : 0);
}

/** Fixed roads against the deck road that faces them: between like rails stand no volts. */
function polarityLines(yard: Yard): readonly TestLine[] {
  return roadsOf(yard)
    .filter(({ bed }) => bed !== 'deck')
    .flatMap(({ name }): readonly TestLine[] => {
      const on = ready(yard, name);
      const met = facing(yard, on.deck).find(({ fixed }) => fixed === name)?.deckRoad;
      if (met === undefined || !switchedRoads(yard).includes(met)) return [];
      const scene = fit('scene', yard, { ...on, switches: { ...on.switches, [met]: true } });
      return (['feed', 'return'] as const).map((rail) => ({
        set: `${name} and ${met} on, facing`,
        scene,
        probes: [`${rail} rail ${name}`, `${rail} rail ${met}`],
        unit: 'V'
      }));
    });
}

/** The lines of a card, in the order in which one goes through them. */
export const testLines = (
  yard: Yard
): readonly { readonly title: string; readonly lines: readonly TestLine[] }[] => [
  {
    title: 'Dead tests: supply unplugged, all stock off',
    lines: roadsOf(yard).flatMap(({ name }) => deadLines(yard, name))
  },
  {
    title: 'Under power: a 12 V test lamp beside the meter, knob full east, no stock',
    lines: roadsOf(yard).flatMap((road) => liveLines(yard, road))
  },
  {
    title: 'Across the joint: the lamp from rail to like rail',
    lines: polarityLines(yard)
  }
];

const expected = (yard: Yard, line: TestLine): string => {
  const value = reads(yard, line);
  return line.unit === 'Ω' ? ohmsText(value) : meterVoltsText(value);
};

const standing = ({ pin, plug, deck }: Scene, yard: Yard): string =>
  [
    ...(yard.stablingRoads > 0 || yard.runningRoad !== 'none'
      ? [`deck ${Math.round(deck)} mm`, `pin ${pin}`]
      : []),
    ...(yard.plug && plug === 'out' ? ['plug out'] : [])
  ].join(', ');

/** Tests that a meter which is read at rest cannot make. */
const byHand: Table = {
  title: 'By hand',
  columns: ['What to do', 'What to see', 'Seen', 'Initials'],
  rows: [
    [
      'Draw the pin 1 mm at a time, lamp across the stabling road',
      'Dark before the pin is clear of its hole',
      '',
      ''
    ],
    ['A ring return: open one link, test again, close it', 'Every reading as before', '', ''],
    [
      'Plug out: buzz each return contact’s two wires by itself, from its joint to the contact',
      'Each one buzzes: side by side they hide one another',
      '',
      ''
    ],
    ['Wiggle the lead and the plug, lamp on a deck road', 'The lamp does not blink', '', '']
  ]
};

/** Every test in order, with what the engine expects; a place for what was read. */
export const testCard: Sheet = {
  id: 'test-card',
  title: 'Test card',
  make: (yard) => ({
    says: [
      'Dead tests first: supply unplugged, every loco and coach off the rails.',
      'First power: feed the controller’s output through a 12 V lamp. With all off it stays dark. If it glows, stop and look for a short.',
      'A reading within 2 % or 0.1 of what is expected passes.'
    ],
    tables: [
      ...testLines(yard).map(({ title, lines }): Table => ({
        title,
        columns: ['No.', 'Set', 'Stands', 'Probes', 'Expected', 'Read', 'Pass', 'Initials'],
        rows: lines.map((line, index) => [
          index + 1,
          line.set,
          standing(line.scene, yard),
          line.probes.map(pointName).join(' – '),
          expected(yard, line),
          '',
          '',
          ''
        ])
      })),
      byHand
    ]
  })
};
