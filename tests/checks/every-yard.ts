import { admit, YardSchema, type Yard } from '../../src/lib/yard';
import { bruteMoments, type BruteMoment } from './brute';

export const yardOf = (input: object): Yard => admit('yard', YardSchema, input);

export const options = (['chain', 'ring', 'star'] as const).flatMap((home) =>
  (['none', 'direct', 'interlocked'] as const).flatMap((runningRoad) =>
    [true, false].flatMap((interlocked) =>
      (['toggles', 'rotary', 'pushes', 'none'] as const).map((switching) => ({
        return: home,
        runningRoad,
        interlocked,
        switching
      }))
    )
  )
);

/** Every size up to this many deck and stabling roads that can be built, in every combination of options. */
export const yards = (deck: number, stabling: number): readonly Yard[] =>
  Array.from({ length: deck }, (_, d) =>
    Array.from({ length: Math.min(stabling, d + 1) + 1 }, (__, s) =>
      options.map((some) => yardOf({ ...some, deckRoads: d + 1, stablingRoads: s }))
    )
  ).flat(2);

/** Moments depend on roads alone, not on how they are wired: worked out once for each layout. */
const known = new Map<string, readonly BruteMoment[]>();
export function momentsOf(yard: Yard): readonly BruteMoment[] {
  const { deckRoads, stablingRoads, runningRoad, runningEnds, interlocked } = yard;
  const key = [deckRoads, stablingRoads, runningRoad, runningEnds, interlocked].join();
  const moments = known.get(key) ?? bruteMoments(yard);
  known.set(key, moments);
  return moments;
}
