import { facing, liveRoads, switchedRoads, type Road, type Yard } from '../yard';
import { askOf } from './ask';
import { knobOf, runs, sceneOf, switched, switchOn, type Ground } from './ground';
import type { WalkStep } from './walkthrough';

/** One step that an outline may have; nothing where the yard has not what it is about. */
export type Draft = (ground: Ground) => WalkStep | undefined;

const nouns = { toggles: 'toggle', rotary: 'selector', pushes: 'push', none: '' } as const;

/** A road with its owner's own name: "road A (Harbour)". */
export const titled = ({ names }: Yard, { name, whole }: Road): string =>
  names[whole] ? `road ${name} (${names[whole]})` : `road ${name}`;

const sentences = (...all: readonly (string | false)[]): string => all.filter(Boolean).join(' ');

export const oneRoad: Draft = (ground) => {
  const { yard, one, first } = ground;
  const scene = sceneOf(ground, switched(yard, [one.name]));
  const own = switchedRoads(yard).includes(one.name);
  const noun = nouns[yard.switching];
  return {
    heading: 'One road, one loop',
    words: sentences(
      `${first} stands on ${titled(yard, one)}.`,
      `Out by the feed${own ? `, through ${noun} ${one.name}` : ''}, through ${first}, home by the return.`,
      runs(yard, scene, first)
        ? `Two inks face each other across ${first}, so it runs.`
        : `Every road is such a loop.`
    ),
    scene,
    lit: [`road ${one.name}`],
    show: ['rows']
  };
};

const returns = {
  chain: 'Their returns are joined from road to road',
  ring: 'Their returns are joined in a ring',
  star: 'Each return goes to one joint by itself'
} as const;

export const allRoads: Draft = (ground) => {
  const { yard, one, two } = ground;
  if (!two) return undefined;
  const shares = yard.second ? 'The controllers share' : 'All roads share';
  return {
    heading: 'All roads',
    words: sentences(
      `Every road repeats that row${yard.switching === 'toggles' ? ', each with a toggle in its feed' : ''}.`,
      `${returns[yard.return]}, and come home by one *return wire*.`,
      `${shares} this way home.`
    ),
    scene: sceneOf(ground, switched(yard, [one.name])),
    lit: ['return wire'],
    show: ['rows']
  };
};

export const oneAtATime: Draft = (ground) => {
  const { yard, one, two, first, second } = ground;
  const own = switchedRoads(yard);
  if (!two || !own.includes(one.name) || !own.includes(two.name)) return undefined;
  const scene = sceneOf(ground, switched(yard, [two.name]));
  const noun = nouns[yard.switching];
  const words = {
    toggles: `Toggle ${one.name} is off, toggle ${two.name} is on.`,
    rotary: `The selector is at ${two.name}: no other road has its feed.`,
    pushes: `Push ${two.name} is held, push ${one.name} is not.`,
    none: ''
  }[yard.switching];
  const isDead = !liveRoads(yard, scene).has(one.name);
  return {
    heading: 'One at a time',
    words: sentences(
      words,
      second !== undefined && runs(yard, scene, second) && `${second} runs.`,
      isDead && `Row ${one.name} is open at its ${noun}: one ink on both rails of ${first}.`,
      'One open switch is enough.'
    ),
    scene,
    lit: [`${noun} ${one.name}`, `${noun} ${two.name}`],
    show: ['rows']
  };
};

/** The road on which a loco runs after the steps before: the second one, or else the first. */
const running = ({ yard, one, two, first, second }: Ground) =>
  two && second && switchedRoads(yard).includes(two.name)
    ? ([two, second] as const)
    : ([one, first] as const);

/** Contacts of the return in words. */
const COUNTS: Readonly<Record<number, string>> = {
  1: 'one contact',
  2: 'two contacts side by side',
  3: 'three contacts side by side',
  4: 'four contacts side by side'
};

export const thePlug: Draft = (ground) => {
  const { yard } = ground;
  if (!yard.plug) return undefined;
  const [road, loco] = running(ground);
  const scene = sceneOf(ground, switched(yard, [road.name]));
  const question = { do: { plug: 'out' as const }, about: [loco] };
  const { returnContacts } = yard.plug;
  return {
    heading: 'The plug',
    words: sentences(
      'The deck moves, so its wires cross a plug.',
      'Each deck road has one contact for its feed.',
      `They share ${COUNTS[returnContacts] ?? `${returnContacts} contacts side by side`} for the return.`
    ),
    scene,
    lit: ['plug', 'plug return 1', `plug ${road.name}`],
    show: ['rows'],
    call: { ask: askOf(yard, question), question }
  };
};

export const thePin: Draft = (ground) => {
  const { yard, shed, waiting, deck } = ground;
  if (!shed || !waiting || !yard.interlocked) return undefined;
  if (facing(yard, deck).some(({ fixed }) => fixed === shed.name)) return undefined;
  const [road] = running(ground);
  const own = switchedRoads(yard).includes(shed.name);
  const scene = sceneOf(ground, {
    ...switched(yard, [road.name]),
    ...(own ? {} : knobOf(yard, shed.name, 'centre'))
  });
  const done = own ? switchOn(yard, shed.name) : knobOf(yard, shed.name, 'west');
  const question = { do: done, falls: { of: [waiting] } };
  return {
    heading: 'The pin',
    words: sentences(
      `${waiting} waits on ${titled(yard, shed)}, and nothing faces it.`,
      'A contact in its feed is made only when the pin is home in its hole.',
      own && 'The knob is set to drive west, towards the gap.'
    ),
    scene,
    lit: [`road ${shed.name}`, `pin contact ${shed.name}`],
    show: ['plan', 'rows'],
    call: { ask: askOf(yard, question), question }
  };
};
