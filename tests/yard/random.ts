import fc from 'fast-check';
import { deckRoads, hasToggle, locoNames, roads, type Yard } from '../../src/lib/yard';
import { sceneOf, yardOf, type Moment, type SceneInput } from './build';

/** Yards of 1–12 roads, chain or ring, with or without running road and toggles. */
export const anyYard: fc.Arbitrary<Yard> = fc
  .record({
    deckRoads: fc.integer({ min: 1, max: 12 }),
    return: fc.constantFrom('chain' as const, 'ring' as const),
    runningRoad: fc.boolean(),
    toggles: fc.boolean()
  })
  .map((input) => yardOf(input));

/** Yards in which every road has its toggle. */
export const toggledYard: fc.Arbitrary<Yard> = fc
  .record({
    deckRoads: fc.integer({ min: 1, max: 12 }),
    return: fc.constantFrom('chain' as const, 'ring' as const)
  })
  .map((input) => yardOf(input));

/** Up to five locos, each on a road of its own. */
const standings = (yard: Yard): fc.Arbitrary<SceneInput['locos']> =>
  fc
    .tuple(
      fc.shuffledSubarray([...locoNames]),
      fc.shuffledSubarray([...roads(yard)], { minLength: roads(yard).length })
    )
    .map(([names, places]) =>
      Object.fromEntries(
        names.slice(0, places.length).map((name, index) => [name, places[index] as string])
      )
    );

const switchesOf = (yard: Yard): fc.Arbitrary<Record<string, boolean>> => {
  const letters = deckRoads(yard).filter((road) => hasToggle(yard, road));
  return fc
    .tuple(...letters.map(() => fc.boolean()))
    .map((on) => Object.fromEntries(letters.map((road, index) => [road, on[index] ?? false])));
};

/** Knob settings from full west to full east, in whole percents. */
export const anyKnob = fc.integer({ min: -100, max: 100 }).map((percent) => percent / 100);

/** A sound yard at any moment: any toggles, any locos, any knob, no wire edits. */
export const anyMoment = (yards: fc.Arbitrary<Yard>): fc.Arbitrary<Moment> =>
  yards.chain((yard) =>
    fc
      .record({ controller: anyKnob, switches: switchesOf(yard), locos: standings(yard) })
      .map((input) => ({ yard, scene: sceneOf(yard, input) }))
  );
