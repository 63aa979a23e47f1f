import { silverLeastAmps } from '../tables';
import { read, switchedRoads, type Yard } from '../yard';
import type { Check, Finding } from './finding';
import { hungriest, roadScene } from './road-scene';

/** Kinds of parts that make and break by silver on silver. */
const silver = ['toggle', 'selector', 'push', 'pin contact', 'lamp pole'];

const milli = (amps: number): string => `${(amps * 1000).toFixed(1)} mA`;

/** Contacts behind a road's switch with the most they see, a loco held still on the road, A. */
function contactsOf(yard: Yard, road: string) {
  const reading = read(yard, roadScene({ yard, roads: [road], locos: [hungriest(yard).name] }));
  return reading.runs
    .flatMap(({ parts }) => parts)
    .filter(({ kind, closed }) => silver.includes(kind) && closed)
    .map(({ id }) => ({ id, amps: Math.abs(reading.amps(id)) }))
    .filter(({ amps }) => amps > 1e-6);
}

function finding(yard: Yard): Finding {
  const all = switchedRoads(yard).flatMap((road) => contactsOf(yard, road));
  const light = all.filter(({ amps }) => amps < silverLeastAmps);
  const least = Math.min(...all.map(({ amps }) => amps));
  const amount = `${milli(least)} at the least; ordinary silver wants about ${milli(silverLeastAmps)}`;
  return light.length > 0
    ? {
        grade: 'think',
        what: `${light.length} silver contacts carry no more than a lamp's current.`,
        where: light.map(({ id }) => id),
        amount,
        why: 'So small a current may not break the film on silver: the lamp stays dark or flickers.',
        cure: 'Use switches with gold-plated or crossbar contacts for the lamps, never for the track.',
        source: 'common catalogues, from memory; Lessons in Electric Circuits IV, Switches'
      }
    : {
        grade: 'fine',
        what: 'Every contact sees the current of a loco: enough to keep silver clean.',
        where: [],
        amount,
        why: 'A current that is too small may not break the film on silver.',
        cure: 'Nothing to do.',
        source: 'common catalogues, from memory; Lessons in Electric Circuits IV, Switches'
      };
}

/** Silver contacts that carry an LED's current and no more. */
export const lightContacts: Check = {
  id: 'light-contacts',
  title: 'Is any contact loaded too lightly?',
  run: (yard) => (switchedRoads(yard).length > 0 ? [finding(yard)] : [])
};
