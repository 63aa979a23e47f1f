import * as v from 'valibot';
import { contacts } from '../../tables';
import { facing, holes } from '../deck';
import { roadNamed } from '../road';
import { faultKind } from './kind';
import { metalRun, pairName } from './parts';

const road = v.pipe(v.union([v.string(), v.number()]), v.transform(String));

/**
 * The gap at the deck's edge is closed: the feed rails of a fixed road and a deck road touch while they
 * face each other: of cut roads those of the sections that meet. Return rails that touch are joined already, and change nothing.
 */
export const touching = faultKind({
  key: 'touching',
  schema: v.strictObject({
    touching: v.tuple([road, road], 'a fixed road and a deck road, such as [Q, A]')
  }),
  places: (yard) =>
    holes(yard).flatMap((hole) =>
      facing(yard, hole.deckMm)
        .filter(({ fixed }) => roadNamed(yard, fixed).whole === hole.fixed)
        .map(({ fixed, deckRoad }) => ({ touching: [fixed, deckRoad] as [string, string] }))
    ),
  place: (fault) => pairName(fault.touching),
  at: () => [],
  byDeck: true,
  adds(_, fault, { yard, deckMm }) {
    const [one, other] = fault.touching;
    const meet = facing(yard, deckMm).some(
      ({ fixed, deckRoad }) => pairName([fixed, deckRoad]) === pairName(fault.touching)
    );
    if (!meet) return [];
    const id = `touching rails ${one}-${other}`;
    const { ohms } = contacts['aligned joint'];
    return [metalRun(id, `feed rail ${one}`, `feed rail ${other}`, ohms)];
  },
  words: ({ touching: [one, other] }) => `the feed rails of roads ${one} and ${other} touch`,
  repair: ({ touching: [one, other] }) => `open the gap between roads ${one} and ${other} again`,
  example: { touching: ['Q', 'A'] }
});
