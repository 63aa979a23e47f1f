import type { Action } from './action';
import { editWords } from './edits';
import type { Level } from './levels';
import type { Scene } from './scene';
import { holesAt } from './deck';
import { CENTRE_VOLTS } from './second';
import { isOn, selectorWords, switchedRoads } from './switching';
import { vehicles } from './vehicles';
import type { Yard } from './yard';

/** "A", "A and B", "A, B and C". */
export const joinWords = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;

/** The words of a text, as a reader counts them. */
export const countWords = (text: string): number =>
  text.split(/\s+/).filter((word) => /\w/.test(word)).length;

/** Volts to one decimal, the way they are said and shown. */
export const voltsText = (volts: number): string => `${Math.abs(volts).toFixed(1)} V`;

/** What a voltmeter shows: with its sign, and a decimal more below a volt. */
export const meterVoltsText = (volts: number): string => {
  const size = Math.abs(volts);
  const digits = size < 1 ? size.toFixed(2) : size.toFixed(1);
  return `${volts < 0 && Number(digits) > 0 ? '−' : ''}${digits} V`;
};

/** What an ohmmeter shows: three figures, or "open". */
export const ohmsText = (ohms: number): string => {
  if (ohms === Infinity) return 'open';
  const [size, unit] =
    ohms < 1e3 ? [ohms, 'Ω'] : ohms < 1e6 ? [ohms / 1e3, 'kΩ'] : [ohms / 1e6, 'MΩ'];
  return `${size < 1 ? size.toFixed(2) : Number(size.toPrecision(3))} ${unit}`;
};

/** Amps to two decimals. */
export const ampsText = (amps: number): string => `${Math.abs(amps).toFixed(2)} A`;

const loadWords = (id: string): string => (id === 'test lamp' ? 'the test lamp' : id);

/** A level in words: "joined to the feed", "at return level, only through Heron". */
export function levelWords(level: Level): string {
  switch (level.joined) {
    case 'feed 2':
      return 'joined to feed 2';
    case 'both':
      return 'feed and return meet: a short';
    case 'nothing':
      return 'joined to nothing';
    case 'through':
      return `at ${(level.share ?? 0) > 0.5 ? 'feed' : 'return'} level, only through ${joinWords(level.through.map(loadWords), 'and')}`;
    default:
      return `joined to the ${level.joined}`;
  }
}

/** The knob in words: "7.2 V east", "centre: no volts". */
export const knobWords = (setting: number, fullVolts: number): string =>
  Math.abs(setting * fullVolts) < CENTRE_VOLTS
    ? 'centre: no volts'
    : `${voltsText(setting * fullVolts)} ${setting > 0 ? 'east' : 'west'}`;

/** What hands do, told to the reader: "You switch road B on." */
export function actionWords(action: Action, yard?: Pick<Yard, 'switching'>): string {
  const thrown = Object.entries(action.switch ?? {}).map(([road, on]) =>
    yard?.switching === 'pushes'
      ? `You ${on ? 'hold' : 'let go of'} push ${road}.`
      : `You switch road ${road} ${on ? 'on' : 'off'}.`
  );
  const { selector, supply, deck, pin, plug } = action;
  const knobs = [
    ['the knob', action.controller] as const,
    ['the second knob', action.second] as const
  ].flatMap(([name, setting]) =>
    setting === undefined ? [] : [`You turn ${name} to ${percentWords(setting)}.`]
  );
  const coupled = Object.entries(action.couple ?? {}).map(([name, to]) =>
    to === 'none' ? `You uncouple ${name}.` : `You couple ${name} to ${to}.`
  );
  return [
    ...thrown,
    selector !== undefined &&
      `You turn the selector ${selectorWords(selector).replace(/^at/, 'to')}.`,
    ...knobs,
    supply && `You switch the supply ${supply}.`,
    deck !== undefined && `You move the deck to ${deckWords(deck)}.`,
    pin && (pin === 'home' ? 'You push the pin home.' : 'You pull the pin out.'),
    plug && (plug === 'in' ? 'You put the plug in.' : 'You pull the plug out.'),
    ...coupled,
    ...(action.edits ?? []).map((edit) => sentence(editWords(edit)))
  ]
    .filter(Boolean)
    .join(' ');
}

const deckWords = (deck: number | string): string =>
  typeof deck === 'number' ? `${deck} mm` : deck;

const percentWords = (setting: number): string =>
  setting === 0
    ? 'centre'
    : `${Math.round(Math.abs(setting) * 100)} % ${setting > 0 ? 'east' : 'west'}`;

/** A clause as a sentence of its own. */
export const sentence = (clause: string): string =>
  `${clause.charAt(0).toUpperCase()}${clause.slice(1)}.`;

/** A scene in a few sentences: who stands where, which roads are switched on, what is odd about the wires. */
export function sceneWords(yard: Yard, scene: Scene): string {
  const all = vehicles(scene);
  const names = Object.keys(all);
  const places = Object.entries(all).map(([name, { road }]) => {
    const { coupled } = scene.stock[name] ?? {};
    return coupled ? `${name} coupled to ${coupled}` : `${name} on road ${road}`;
  });
  return [
    ...(names.length > 0 ? [`Here is ${joinWords(places, 'and')}.`] : []),
    ...switchSentences(yard, scene),
    `The knob is at ${percentWords(scene.controller)}.`,
    ...(yard.second
      ? [
          `The second knob, for ${joinWords(yard.second.roads, 'and')}, is at ${percentWords(scene.second)}.`
        ]
      : []),
    ...(scene.supply === 'off' ? ['The supply is off.'] : []),
    ...deckSentences(yard, scene),
    ...(yard.return === 'ring' ? ['The return is a ring.'] : []),
    ...scene.edits.map((edit) => sentence(editWords(edit)))
  ].join(' ');
}

/** What the hand has switched. */
function switchSentences(yard: Yard, scene: Scene): readonly string[] {
  const switched = switchedRoads(yard);
  const on = joinWords(
    switched.filter((road) => isOn(yard, scene, road)),
    'and'
  );
  if (switched.length === 0) return [];
  if (yard.switching === 'rotary') return [`The selector is ${selectorWords(scene.selector)}.`];
  if (yard.switching === 'pushes') return [on === '' ? 'No push is held.' : `Held: ${on}.`];
  return [on === '' ? 'All toggles are off.' : `Switched on: ${on}.`];
}

/** Which deck roads a stop brings to which fixed roads: "A faces Q and QQ"; empty between stops. */
export function stopWords(yard: Yard, deckMm: number, faces = 'faces'): string {
  const here = holesAt(yard, deckMm);
  const brought = [...new Set(here.map(({ deckRoad }) => deckRoad))].map((road) => {
    const fixed = here.flatMap((hole) => (hole.deckRoad === road ? [hole.fixed] : []));
    return `${road} ${faces} ${joinWords(fixed, 'and')}`;
  });
  return joinWords(brought, 'and');
}

/** Where the deck stands, and pin and plug; nothing for a deck that does not move. */
function deckSentences(yard: Yard, scene: Scene): readonly string[] {
  if (!yard.plug) return [];
  const stop = stopWords(yard, scene.deck, 'faces road');
  return [
    stop === '' ? 'The deck is between its stops.' : `Deck road ${stop}.`,
    `The pin is ${scene.pin}.`,
    ...(scene.plug === 'out' ? ['The plug is out.'] : [])
  ];
}
