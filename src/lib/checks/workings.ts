import { WATCH_SECONDS } from '../predict';
import {
  driveTo,
  playSequence,
  quayWorking,
  SequenceSchema,
  start,
  type StepPlayed
} from '../motion';
import {
  admit,
  BorderError,
  facing,
  fit,
  fleetOf,
  holes,
  roadNamed,
  roadTitle,
  SceneSchema,
  vehicleIn,
  type Facing,
  type Scene,
  type Yard
} from '../yard';
import type { Check, Finding } from './finding';
import { roadScene } from './road-scene';

/** Two roads in line, and the way in which one drives in: onto the deck from the layout, off it into stabling. */
interface Entry {
  readonly from: string;
  readonly onto: string;
  readonly way: 'east' | 'west';
}

function entryOf(yard: Yard, { fixed, deckRoad, end }: Facing): Entry {
  return roadNamed(yard, fixed).kind === 'stabling'
    ? { from: deckRoad, onto: fixed, way: end }
    : { from: fixed, onto: deckRoad, way: end === 'west' ? 'east' : 'west' };
}

/** One way onto the deck and one into stabling, where there are. */
const entries = (yard: Yard): readonly Entry[] =>
  ['running', 'stabling'].flatMap((kind) =>
    holes(yard)
      .flatMap(({ deckMm }) => facing(yard, deckMm))
      .filter(({ fixed }) => roadNamed(yard, fixed).kind === kind)
      .slice(0, 1)
      .map((pair) => entryOf(yard, pair))
  );

/** The stock that stands in the way, and how near to the joint it and the loco stand, mm. */
const STANDING = 'wagon';
const NEAR_MM = 60;

/** The pin home, both roads on where they can be, a loco driven towards a wagon that stands on the other. */
function sceneOf(yard: Yard, { from, onto, way }: Entry, loco: string): Scene {
  const east = way === 'east';
  const at = (road: string, name: string, leaves: boolean) => {
    const inset = NEAR_MM + vehicleIn(yard, name).lengthMm / 2;
    return { road, atMm: leaves === east ? roadNamed(yard, road).lengthMm - inset : inset };
  };
  const fixedRoad = roadNamed(yard, from).bed === 'deck' ? onto : from;
  const { deck, pin, switches, selector } = roadScene({ yard, roads: [fixedRoad] });
  const both = { ...switches, ...roadScene({ yard, roads: [from, onto] }).switches };
  const knob = east ? 1 : -1;
  return fit(
    'scene',
    yard,
    admit('scene', SceneSchema, {
      controller: knob,
      second: yard.second ? knob : 0,
      switches: both,
      selector,
      deck,
      pin,
      locos: { [loco]: at(from, loco, true) },
      stock: { [STANDING]: at(onto, STANDING, false) }
    })
  );
}

/** A drive onto an occupied road, and whether the loco runs into what stands there. */
function driven(yard: Yard, entry: Entry) {
  const { name } = fleetOf(yard).reduce((a, b) => (b.lengthMm < a.lengthMm ? b : a));
  const scene = sceneOf(yard, entry, name);
  const { events } = driveTo(yard, start(scene), WATCH_SECONDS);
  const bumps = events.some(({ kind, other }) => kind === 'bump' && other === STANDING);
  return { ...entry, name, scene, bumps };
}

function occupiedFinding(yard: Yard): readonly Finding[] {
  const tried = entries(yard).map((entry) => driven(yard, entry));
  const bumped = tried.filter(({ bumps }) => bumps);
  const [first] = bumped;
  if (!first) return [];
  const { name, from, onto, way, scene } = first;
  return [
    {
      grade: 'think',
      what: 'Nothing keeps a loco from running into what stands on the road that it is driven to.',
      where: bumped.map((each) => each.onto),
      amount: `driven from ${roadTitle(yard, from)} onto ${roadTitle(yard, onto)} with the knob full ${way}, ${name} meets a ${STANDING} within ${WATCH_SECONDS} s`,
      why: 'Switches and interlock know where the deck is. They do not know what stands on a road.',
      cure: 'Look at the road before you turn the knob, and keep a list of what stands where.',
      source: 'the engine',
      board: { yard, scene }
    }
  ];
}

/** The demo's own working, where this yard has its roads. */
function quayFinding(yard: Yard): readonly Finding[] {
  const { name, scene, steps } = admit('working', SequenceSchema, quayWorking.sequence);
  let begun: Scene;
  try {
    begun = fit('scene', yard, scene);
  } catch (error) {
    if (error instanceof BorderError) return [];
    throw error;
  }
  const played = playSequence(yard, begun, { steps });
  const last = played.at(-1) as StepPlayed;
  const amiss = last.findings.join(' ');
  const seconds = played.reduce((sum, each) => sum + each.seconds, 0);
  return [
    {
      grade: amiss === '' ? 'fine' : 'must fix',
      what:
        amiss === ''
          ? `'${name}' drives into no occupied road.`
          : `'${name}' goes wrong in step ${played.length}: ${amiss}`,
      where: [],
      amount: `${played.length} of ${steps.length} steps played, ${seconds.toFixed(0)} s of driving`,
      why: 'Each step was played: nothing else may move, meet or fall.',
      cure: amiss === '' ? 'Keep to its order.' : 'Change that step, or clear the road before it.',
      source: 'the engine',
      board: { yard, scene: amiss === '' ? begun : last.begun }
    }
  ];
}

/** Whether a road is driven into while something stands there. */
export const workings: Check = {
  id: 'workings',
  title: 'Is a road driven into while something stands there?',
  run: (yard) => [...quayFinding(yard), ...occupiedFinding(yard)]
};
