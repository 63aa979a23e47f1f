import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { linkFragment, yardFile } from '../../src/lib/share';
import { fit, roads, SceneSchema, YardSchema } from '../../src/lib/yard';

/** Before the fragment: an address as long as one may reasonably be. */
const ADDRESS = 'https://'.length + 60 + '/yard/'.length;

const parse = (deckRoads: number, stablingRoads: number, more = {}) =>
  v.parse(YardSchema, { name: 'My yard', deckRoads, stablingRoads, ...more });

/** The same yard with each road under a name of its own, and nothing left as usual. */
function settled(deckRoads: number, stablingRoads: number) {
  const plain = parse(deckRoads, stablingRoads);
  const words = ['Harbour', 'Mill', 'Quarry', 'Parcels', 'Branch', 'Milk', 'Fish', 'Coal', 'Stone'];
  const names = Object.fromEntries(
    roads(plain).map((road, index) => [
      road,
      `${words[index % words.length]} ${words[(index * 4 + 1) % words.length]} ${index}`
    ])
  );
  const size = (lengthM: number) => ({ size: '0.5 mm²', lengthM });
  return parse(deckRoads, stablingRoads, {
    names,
    interlocked: false,
    lamps: 'track',
    return: 'ring',
    runningRoad: 'interlocked',
    roadLengthMm: 1310,
    runningLengthMm: 2150,
    stablingLengthMm: 290,
    centresMm: 58,
    releaseCentresMm: 74,
    stablingFromMm: 31,
    toleranceMm: 0.4,
    openingMm: 44,
    plug: { returnContacts: 3 },
    supply: { volts: 14.5, ohms: 0.7, limitAmps: 1.2 },
    wires: { main: size(3.1), link: size(0.12), dropper: size(1.7), lamp: size(0.6) },
    colours: { scheme: 'NEM 605', lampFeed: 'VT', lampReturn: 'GY' },
    locos: { Marten: { shape: 'diesel', lengthMm: 231, ohms: 17.5, mass: 0.41 } }
  });
}

const lengthOf = (yard: ReturnType<typeof parse>): number => {
  const moment = v.parse(SceneSchema, {
    controller: 0.6,
    locos: { Heron: { road: 'A', atMm: 500 } }
  });
  return ADDRESS + linkFragment(yardFile({ yard, scene: fit('scene', yard, moment) })).length;
};

/** A link of 5+4 may have 2 000; the bounds lie below, near what was measured. */
describe('the length of a link, in characters', () => {
  test.each([
    [5, 4, 400, 1000],
    [24, 12, 400, 1300],
    [40, 20, 400, 1600]
  ])(
    '%i+%i: at most %i plain, and %i with everything set by its owner',
    (deck, stabling, plain, all) => {
      const lengths = [parse(deck, stabling), settled(deck, stabling)].map(lengthOf);
      console.info(`A link of ${deck}+${stabling}: ${lengths.join(' plain, ')} all set.`);
      expect(lengths[0]).toBeLessThanOrEqual(plain);
      expect(lengths[1]).toBeLessThanOrEqual(all);
    }
  );
});
