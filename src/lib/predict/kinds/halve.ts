import * as v from 'valibot';
import { lampOn, FaultsSchema, PairSchema } from './lampOn';
import { questionKind } from './kind';

const id = 'the best test';

/** Most faults that a test may leave, by how it shows each of them. */
const worst = (shows: readonly string[]): number =>
  Math.max(...shows.map((one) => shows.filter((other) => other === one).length));

/** At which of these places does a test lamp part the suspects best, whatever it shows? */
export const halve = questionKind({
  key: 'halve',
  schema: v.strictObject({
    of: FaultsSchema,
    lamp: v.pipe(
      v.record(v.string(), PairSchema, 'three places, each with its two points'),
      v.check((lamp) => Object.keys(lamp).length === 3, 'three places, each with its two points')
    )
  }),
  asked: ({ lamp }) => [{ id, options: Object.keys(lamp) }],
  answer({ of, lamp }, played) {
    const left = Object.entries(lamp).map(([name, pair]) => {
      const shows = Object.values(of).map((fault) => lampOn(played, [fault], pair));
      return { name, most: worst(shows) };
    });
    const least = Math.min(...left.map(({ most }) => most));
    const best = left.filter(({ most }) => most === least).map(({ name }) => name);
    return { [id]: best.join(' and ') };
  },
  names: () => [],
  hides: () => []
});
