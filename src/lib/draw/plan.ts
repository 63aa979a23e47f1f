import { deckRoads, roads, RUNNING_ROAD, type Yard } from '../yard';

/** One road seen from above, px. */
export interface PlanRoad {
  readonly road: string;
  readonly y: number;
  readonly west: number;
  readonly east: number;
  readonly letterX: number;
}

/** All that the plan draws, px; across the deck it is to scale. */
export interface PlanLayout {
  readonly width: number;
  readonly height: number;
  /** px per mm along, and across. */
  readonly along: number;
  readonly across: number;
  readonly deck: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly roads: readonly PlanRoad[];
}

/** Width of a loco over its steps, mm. Source: common practice for 4 mm scale. */
export const LOCO_WIDTH_MM = 34;
/** Half the gauge, mm: 16.5 mm gauge. */
export const HALF_GAUGE_MM = 8.25;
const MARGIN = 16;
/** From the outer roads to the deck's edge, and from the deck to the well's, mm. */
const EDGE_MM = 54;
const WELL = 14;

/** Lays out the plan in `width` px. The deck stands between two stops; both its ends are closed by barriers. */
export function planLayout(yard: Yard, width: number): PlanLayout {
  const running = yard.runningRoad ? 0.3 * yard.roadLengthMm : 0;
  const along = (width - 2 * MARGIN - 2 * WELL) / (yard.roadLengthMm + running);
  const across = Math.max(along, 0.46);
  const deckX = MARGIN + WELL + running * along;
  const names = deckRoads(yard);
  const deck = {
    x: deckX,
    y: WELL + 4,
    width: yard.roadLengthMm * along,
    height: ((names.length - 1) * yard.centresMm + 2 * EDGE_MM) * across
  };
  const roadY = (index: number) => deck.y + (EDGE_MM + index * yard.centresMm) * across;
  return {
    width,
    height: deck.y + deck.height + WELL + 4,
    along,
    across,
    deck,
    roads: roads(yard).map((road) =>
      road === RUNNING_ROAD
        ? {
            road,
            y: roadY(0) - (yard.centresMm / 2) * across,
            west: MARGIN,
            east: deckX - WELL,
            letterX: MARGIN + 12
          }
        : {
            road,
            y: roadY(names.indexOf(road)),
            west: deck.x,
            east: deck.x + deck.width,
            letterX: deck.x + 18
          }
    )
  };
}
