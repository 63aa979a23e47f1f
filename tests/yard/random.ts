import fc from 'fast-check';
import {
  holes,
  locoNames,
  roads,
  toggleRoads,
  travel,
  type Scene,
  type Yard
} from '../../src/lib/yard';
import { sceneOf, yardOf, type Moment, type SceneInput } from './build';

const anyReturn = fc.constantFrom('chain' as const, 'ring' as const, 'star' as const);

/** Yards of 1–12 storage roads, with or without toggles, running roads at any end and up to four stabling roads. */
export const anyYard: fc.Arbitrary<Yard> = fc
  .record({
    deckRoads: fc.integer({ min: 1, max: 12 }),
    stablingRoads: fc.integer({ min: 0, max: 4 }),
    return: anyReturn,
    runningRoad: fc.constantFrom('none' as const, 'direct' as const, 'interlocked' as const),
    runningEnds: fc.constantFrom('west', 'both', 'east', 'two west', 'two east'),
    switching: fc.constantFrom('toggles' as const, 'none' as const)
  })
  .map((input) =>
    yardOf({ ...input, stablingRoads: Math.min(input.stablingRoads, input.deckRoads) })
  );

/** Yards whose deck is wired for good and in which every road has its toggle. */
export const toggledYard: fc.Arbitrary<Yard> = fc
  .record({ deckRoads: fc.integer({ min: 1, max: 12 }), return: anyReturn })
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
  const letters = toggleRoads(yard);
  return fc
    .tuple(...letters.map(() => fc.boolean()))
    .map((on) => Object.fromEntries(letters.map((road, index) => [road, on[index] ?? false])));
};

/** The deck in one of its holes, the pin home or out, or anywhere in its travel with the pin out. */
export const anyDeck = (yard: Yard): fc.Arbitrary<Pick<Scene, 'deck' | 'pin'>> => {
  const { least, most } = travel(yard);
  const between = fc.record({
    deck: fc.integer({ min: Math.ceil(least), max: Math.floor(most) }),
    pin: fc.constant('out' as const)
  });
  const stops = holes(yard).map(({ deckMm }) => deckMm);
  if (stops.length === 0) return between;
  const pin = fc.constantFrom('home' as const, 'out' as const);
  return fc.oneof(between, fc.record({ deck: fc.constantFrom(...stops), pin }));
};

/** The plug, in more often than out. */
export const anyPlug = fc.constantFrom('in' as const, 'in' as const, 'in' as const, 'out' as const);

/** Knob settings from full west to full east, in whole percents. */
export const anyKnob = fc.integer({ min: -100, max: 100 }).map((percent) => percent / 100);

/** A sound yard at any moment: any toggles, any locos, any knob, any deck, pin and plug, no wire edits. */
export const anyMoment = (yards: fc.Arbitrary<Yard>): fc.Arbitrary<Moment> =>
  yards.chain((yard) =>
    fc
      .record({
        controller: anyKnob,
        switches: switchesOf(yard),
        locos: standings(yard),
        plug: anyPlug,
        at: anyDeck(yard)
      })
      .map(({ at, ...input }) => ({ yard, scene: sceneOf(yard, { ...input, ...at }) }))
  );
