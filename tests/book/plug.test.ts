import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { namesOf } from '../../src/lib/book/circuit';
import { contactPlaces, plugSizes } from '../../src/lib/book/contactRows';
import { plug, plugsOf } from '../../src/lib/book/plug';
import { bookDrawings } from '../../src/lib/draw/bookDrawings';
import { svgOf } from '../../src/lib/draw/drawing';
import { wire } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { yardOf } from '../yard/build';

describe('contactPlaces(size)', () => {
  // Source: D-type arrangement of MIL-DTL-24308, as general texts print it: 5-4, 8-7, 13-12, 19-18, 17-16-17.
  test.each([
    [5, [5]],
    [9, [5, 4]],
    [15, [8, 7]],
    [25, [13, 12]],
    [37, [19, 18]],
    [50, [17, 16, 17]]
  ])('of %i contacts has rows of %j, its numbers in order', (size, rows) => {
    const places = contactPlaces(size);
    expect(places.map(({ number }) => number)).toEqual(places.map((_, index) => index + 1));
    expect(rows.map((__, row) => places.filter((place) => place.row === row).length)).toEqual(rows);
    expect(places).toHaveLength(size);
  });
});

/** Contacts drawn in an SVG: the mating side first, then the solder side. */
const drawn = (svg: string) =>
  [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="[\d.]+" data-place="([^"]+)"/g)].map(
    ([, x, y, place]) => ({ x: Number(x), y: Number(y), place })
  );

test('for any yard: each contact of the wiring once, two spare at least, the solder side a mirror of the mating side', () => {
  const anyPlugged = fc
    .record({
      deckRoads: fc.integer({ min: 1, max: 40 }),
      stablingRoads: fc.integer({ min: 0, max: 20 }),
      returnContacts: fc.integer({ min: 1, max: 8 })
    })
    .map(({ deckRoads, stablingRoads, returnContacts }) =>
      yardOf({
        deckRoads,
        stablingRoads: Math.min(stablingRoads, deckRoads),
        plug: { returnContacts }
      })
    );
  fc.assert(
    fc.property(anyPlugged, (yard) => {
      const used = wire(yard)
        .flatMap((run) => run.parts)
        .filter(({ kind }) => kind === 'plug')
        .map(({ id }) => id);
      const plugs = plugsOf(yard);
      const places = plugs.flatMap(({ contacts }) => contacts.flatMap(({ place }) => place ?? []));
      expect(places).toEqual(used);
      for (const { size } of plugs) expect(plugSizes).toContain(size);
      if (used.length <= 48) expect(plugs[0]?.size).toBeGreaterThanOrEqual(used.length + 2);
      const [{ whole } = { whole: undefined }] = bookDrawings('plug', yard);
      if (!whole) throw new Error('no drawing');
      const faces = drawn(svgOf(whole));
      const [mating, solder] = [faces.slice(0, faces.length / 2), faces.slice(faces.length / 2)];
      expect(solder.map(({ place }) => place)).toEqual(mating.map(({ place }) => place));
      for (const [index, { x }] of mating.entries()) {
        near(x + (solder[index]?.x ?? 0), whole.width, { abs: 0.002 });
      }
      expect(mating[0]?.x).toBeLessThan(solder[0]?.x ?? 0);
    }),
    { numRuns: 40, seed: 3 }
  );
});

test('more contacts than the largest plug has make two plugs, each drawn, and named by its number', () => {
  const cuts = Array.from('ABCDEFGHIJ', (road) => ({ road, atMm: 500 }));
  const yard = yardOf({ deckRoads: 40, stablingRoads: 4, cuts });
  expect(plugsOf(yard).map(({ size }) => size)).toEqual([50, 5]);
  const drawings = bookDrawings('plug', yard).map(({ whole }) => whole.id);
  expect(drawings).toEqual(['plug-1', 'plug-2']);
  const names = namesOf(yard);
  const [first, second] = plugsOf(yard).map(({ contacts }) => contacts[0]?.place ?? '');
  expect([names.get(first ?? ''), names.get(second ?? '')]).toEqual(['−X1:1', '−X2:1']);
});

// Source: common practice, 3 A a contact when several are loaded together.
test.each([
  [1, 12, 'One contact is enough'],
  [2, 12, 'It has 2 contacts side by side'],
  [1, 24, 'Take 2 contacts for it: 1 is too few']
])('a return with %i contacts at %d V: %s', (returnContacts, volts, words) => {
  const yard = yardOf({
    deckRoads: 6,
    plug: { returnContacts },
    supply: { volts, limitAmps: 10 }
  });
  expect(plug.make(yard).says.join(' ')).toContain(words);
});
