import { silverLeastAmps } from '../tables';
import { read, switchedRoads, type Scene, type Yard } from '../yard';
import type { Check, Finding } from './finding';
import { milliText } from './milli';
import { hungriest, roadScene } from './road-scene';

/** Kinds of parts that make and break by silver on silver. */
const silver = ['toggle', 'selector', 'push', 'pin contact', 'lamp pole'];

/** A contact, the most that it sees, A, and the road on which a loco is held then. */
interface Loaded {
  readonly id: string;
  readonly amps: number;
  readonly road: string;
}

const sceneOf = (yard: Yard, road: string): Scene =>
  roadScene({ yard, roads: [road], locos: [hungriest(yard).name] });

/** Contacts behind a road's switch with what they see, a loco held still on the road. */
function contactsOf(yard: Yard, road: string): readonly Loaded[] {
  const reading = read(yard, sceneOf(yard, road));
  return reading.runs
    .flatMap(({ parts }) => parts)
    .filter(({ kind, closed }) => silver.includes(kind) && closed)
    .map(({ id }) => ({ id, amps: Math.abs(reading.amps(id)), road }))
    .filter(({ amps }) => amps > 1e-6);
}

function finding(yard: Yard): Finding {
  const all = switchedRoads(yard).flatMap((road) => contactsOf(yard, road));
  const light = all.filter(({ amps }) => amps < silverLeastAmps);
  const least = all.reduce((a, b) => (b.amps < a.amps ? b : a));
  const common = {
    where: (light.length > 0 ? light : [least]).map(({ id }) => id),
    amount: `${milliText(least.amps, 'A')} through ${least.id}; ordinary silver wants about ${milliText(silverLeastAmps, 'A')}`,
    source: 'common catalogues, from memory; Lessons in Electric Circuits IV, Switches',
    board: { yard, scene: sceneOf(yard, least.road) }
  };
  return light.length > 0
    ? {
        ...common,
        grade: 'think',
        what: `${light.length === 1 ? 'A silver contact carries' : `${light.length} silver contacts carry`} a lamp's current and no more.`,
        why: 'So small a current may not break the film on silver: the lamp stays dark or flickers, and tells a lie.',
        cure: 'Use switches with gold-plated or crossbar contacts for the lamps, never for the track.'
      }
    : {
        ...common,
        grade: 'fine',
        what: 'Every contact carries the current of a loco: enough to keep silver clean.',
        why: 'A current that is too small may not break the film on silver.',
        cure: 'Nothing to do.'
      };
}

/** Silver contacts that carry an LED's current and no more. */
export const lightContacts: Check = {
  id: 'light-contacts',
  title: 'Is any contact loaded too lightly?',
  run: (yard) => (switchedRoads(yard).length > 0 ? [finding(yard)] : [])
};
