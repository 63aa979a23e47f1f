import { travel } from './deck';
import { deckRoads, roadsOf } from './road';
import type { Yard } from './yard';

/** How much room a deck takes, mm. */
export interface DeckRoom {
  /** From one end of the slide to the other. */
  readonly travelMm: number;
  /** Over the deck's outer roads, with half a road's room at each side. */
  readonly deckWidthMm: number;
  /** Opening in which the deck slides. */
  readonly wellWidthMm: number;
}

/**
 * Room for a yard's deck, mm. A deck of n roads is n centres wide; the well holds it at both ends
 * of its travel. Source: geometry; six roads at 40, 57 or 100 mm give wells of 440, 627 and 1100 mm.
 */
export function deckRoom(yard: Yard): DeckRoom {
  const { least, most } = travel(yard);
  const names = deckRoads(yard);
  const south = roadsOf(yard)
    .filter(({ name }) => names.includes(name))
    .map(({ southMm }) => southMm);
  const deckWidthMm = Math.max(...south) - Math.min(...south) + yard.centresMm;
  const travelMm = most - least;
  return { travelMm, deckWidthMm, wellWidthMm: deckWidthMm + travelMm };
}

/** Slack of a hanging lead, mm. Source: common practice. */
const SPARE_MM = 150;

/**
 * Least length of the floating lead, mm: anchored midway along the travel, `asideMm` to the side of
 * the deck's own anchor, √((travel/2)² + aside²) and 150 mm to spare. Source: geometry and common practice.
 */
export const leadMm = (travelMm: number, asideMm: number): number =>
  Math.hypot(travelMm / 2, asideMm) + SPARE_MM;
