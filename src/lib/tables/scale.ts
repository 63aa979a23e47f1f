/** A modelling scale that a yard can be built in. */
export type Scale = 'N' | 'OO/HO' | 'O';

/** What is usual for a scale, mm. */
export interface ScaleEntry {
  readonly gaugeMm: number;
  /** Centre to centre of storage roads, with room for fingers. */
  readonly centresMm: number;
  /** Between deck and fixed rail. */
  readonly gapMm: number;
  /** Side step at the joint above which a deck road no longer faces. */
  readonly toleranceMm: number;
  readonly deckLengthMm: number;
  /** Opening that a fixed road leaves in the barrier. */
  readonly openingMm: number;
  readonly stablingLengthMm: number;
}

/**
 * Scales and what is usual in them. Gauges are those of NEM 010 and NMRA S-1.2 (from memory);
 * everything else is common practice.
 */
export const scales: Readonly<Record<Scale, ScaleEntry>> = {
  N: {
    gaugeMm: 9,
    centresMm: 40,
    gapMm: 0.5,
    toleranceMm: 0.25,
    deckLengthMm: 900,
    openingMm: 18,
    stablingLengthMm: 170
  },
  'OO/HO': {
    gaugeMm: 16.5,
    centresMm: 60,
    gapMm: 0.8,
    toleranceMm: 0.4,
    deckLengthMm: 1200,
    openingMm: 30,
    stablingLengthMm: 300
  },
  O: {
    gaugeMm: 32,
    centresMm: 100,
    gapMm: 1,
    toleranceMm: 0.6,
    deckLengthMm: 1800,
    openingMm: 56,
    stablingLengthMm: 520
  }
};
