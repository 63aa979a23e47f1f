import {
  editWords,
  isOn,
  joinWords,
  knobWords,
  secondVolts,
  selectorWords,
  stopWords,
  switchedRoads,
  switchPlace,
  switchWord,
  faultWords,
  vehicles,
  type Scene,
  type Yard
} from '../yard';

/** One thing that differs between two scenes. */
export interface Change {
  /** A clause: "toggle B is on". */
  readonly words: string;
  /** The place to look at, as boards know it; `deck`, `pin` and `plug` among them. */
  readonly place: string;
}

function switched(yard: Yard, before: Scene, after: Scene): readonly Change[] {
  if (yard.switching === 'rotary') {
    if (before.selector === after.selector) return [];
    const [road] = after.selector === 'off' ? [before.selector] : after.selector.split('-');
    const place = `selector ${road}`;
    return [{ words: `the selector is ${selectorWords(after.selector)}`, place }];
  }
  return switchedRoads(yard)
    .filter((road) => isOn(yard, before, road) !== isOn(yard, after, road))
    .map((road) => {
      const place = switchPlace(yard, road);
      return { words: `${place} is ${switchWord(yard, after, road)}`, place };
    });
}

function deckChanges(yard: Yard, before: Scene, after: Scene): readonly Change[] {
  const brought = stopWords(yard, after.deck, 'to');
  const deck = brought ? `the deck brings ${brought}` : 'the deck is between its stops';
  return [
    ...(before.deck === after.deck ? [] : [{ words: deck, place: 'deck' }]),
    ...(before.pin === after.pin ? [] : [{ words: `the pin is ${after.pin}`, place: 'pin' }]),
    ...(before.plug === after.plug ? [] : [{ words: `the plug is ${after.plug}`, place: 'plug' }])
  ];
}

function fedChanges(yard: Yard, before: Scene, after: Scene): readonly Change[] {
  const knob = yard.second ? 'knob 1' : 'the knob';
  const at = (setting: number, volts: number) => `at ${knobWords(setting, volts)}`;
  return [
    ...(before.controller === after.controller
      ? []
      : [
          {
            words: `${knob} is ${at(after.controller, yard.supply.volts)}`,
            place: 'controller'
          }
        ]),
    ...(before.second === after.second
      ? []
      : [{ words: `knob 2 is ${at(after.second, secondVolts(yard))}`, place: 'controller 2' }]),
    ...(before.supply === after.supply
      ? []
      : [{ words: `the supply is ${after.supply}`, place: 'controller' }])
  ];
}

/** Nearer than this a vehicle is where it was, mm: that it rolled on while watched is no change. Source: common practice. */
const SAME_MM = 10;

function stood(before: Scene, after: Scene): readonly Change[] {
  const [was, is] = [vehicles(before), vehicles(after)];
  const gone = Object.keys(was).filter((name) => !(name in is));
  const moved = Object.entries(is).filter(([name, at]) => {
    const from = was[name];
    const same = from?.road === at.road && Math.abs(from.atMm - at.atMm) < SAME_MM;
    return !same || from.fallen !== at.fallen || from.faces !== at.faces;
  });
  return [
    ...moved.map(([name, at]) => ({
      words: at.fallen ? `${name} lies in the gap` : `${name} stands on road ${at.road}`,
      place: name
    })),
    ...gone.map((name) => ({ words: `${name} is gone`, place: `road ${was[name]?.road}` }))
  ];
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The items of `these` that are not among `those`. */
const without = <T>(these: readonly T[], those: readonly T[]): readonly T[] =>
  these.filter((each) => !those.some((other) => same(each, other)));

/** The place that an edit names first: a wire, a switch, a road. */
const editPlace = (edit: object): string => {
  const [first] = Object.values(edit) as readonly unknown[];
  return typeof first === 'string' ? first : Array.isArray(first) ? String(first[0]) : '';
};

const wired = (before: Scene, after: Scene): readonly Change[] => [
  ...without(after.edits, before.edits).map((edit) => ({
    words: editWords(edit),
    place: editPlace(edit)
  })),
  ...without(before.edits, after.edits).map((edit) => ({
    words: `no longer: ${editWords(edit)}`,
    place: editPlace(edit)
  }))
];

const failed = (before: Scene, after: Scene): readonly Change[] => [
  ...without(after.faults, before.faults).map((fault) => ({
    words: `a fault: ${faultWords(fault)}`,
    place: ''
  })),
  ...without(before.faults, after.faults).map((fault) => ({
    words: `put right: ${faultWords(fault)}`,
    place: ''
  }))
];

/** What differs between two scenes of a yard: switches, deck, pin, plug, knobs, vehicles, wires, faults. */
export const changesOf = (yard: Yard, before: Scene, after: Scene): readonly Change[] => [
  ...switched(yard, before, after),
  ...deckChanges(yard, before, after),
  ...fedChanges(yard, before, after),
  ...stood(before, after),
  ...wired(before, after),
  ...failed(before, after)
];

/** Changes told one by one; of more only how many there are. */
const MOST_TOLD = 6;

/** The changes in one sentence: "Changed: toggle B is on and the pin is out."; empty where there are none. */
export function changeWords(changes: readonly Change[]): string {
  if (changes.length === 0) return '';
  const told = changes.slice(0, MOST_TOLD).map(({ words }) => words);
  const rest = changes.length - MOST_TOLD;
  return `Changed: ${joinWords(rest > 0 ? [...told, `${rest} more`] : told, 'and')}.`;
}
