import { placed, type Reading, type Scene } from '../yard';
import { distanceTo, type Point } from './geometry';
import { locoOn, type RowsLayout } from './rows';
import type { PlanLayout } from './plan';

/** Nearer than this to a part's middle, or to a wire, a hand points at it, px. */
const NEAR_PART = 24;
const NEAR_WIRE = 9;
/** Half the height of a row's rails with what stands on them, px. */
const ROAD_HALF = 22;

/** The road to which a place belongs: `road A`, a loco, or a part of a road's own run. */
export function roadOf(reading: Reading, scene: Scene, place: string): string | undefined {
  const [, road] = /^road (.+)$/.exec(place) ?? [];
  if (road !== undefined) return road;
  if (scene.locos[place]) return scene.locos[place].road;
  return reading.runs.find((run) => placed(run).some(({ id }) => id === place))?.road;
}

const nearest = <T>(all: readonly T[], far: (each: T) => number, limit: number): T | undefined => {
  const best = all
    .map((each) => ({ each, away: far(each) }))
    .filter(({ away }) => away <= limit)
    .toSorted((a, b) => a.away - b.away)[0];
  return best?.each;
};

/** What lies under a pointer in the rows: an instrument, a contact, a loco, a road or a wire. */
export function rowsTarget(layout: RowsLayout, scene: Scene, at: Point): string | undefined {
  const { controllers, rails } = layout;
  const box = controllers.findIndex(
    ({ x, y, width, height }) => at.x > x && at.x < x + width && at.y > y && at.y < y + height
  );
  if (box >= 0) return box === 0 ? 'controller' : 'controller 2';
  const parts = [
    ...layout.probes.map(({ id, at: middle }) => ({ id, middle })),
    ...layout.runs.flatMap(({ glyphs }) => glyphs)
  ];
  const part = nearest(
    parts,
    ({ middle }) => Math.hypot(middle.x - at.x, middle.y - at.y),
    NEAR_PART
  );
  if (part) return part.id;
  const row = layout.rows.find(({ feedRail, returnRail }) => {
    const middle = (feedRail.y + returnRail.y) / 2;
    return at.y > middle - 2 * ROAD_HALF && at.y < middle + ROAD_HALF;
  });
  if (row && at.x > rails.west && at.x < rails.east) {
    const loco = locoOn(scene, row.road);
    const x = loco ? layout.x(row.road, scene.locos[loco]?.atMm ?? 0) : NaN;
    if (loco && Math.abs(x - at.x) < 44) return loco;
    if (at.y > row.returnRail.y - ROAD_HALF) return `road ${row.road}`;
  }
  const stretches = layout.runs.flatMap((run) => run.stretches);
  return nearest(stretches, ({ line }) => distanceTo(line, at), NEAR_WIRE)?.part;
}

/** What lies under a pointer in the plan: a loco, a road, or the pin. */
export function planTarget(layout: PlanLayout, scene: Scene, at: Point): string | undefined {
  const road = nearest(
    layout.roads.filter(({ west, east }) => at.x > west && at.x < east),
    ({ y }) => Math.abs(y - at.y),
    layout.across * 30
  );
  if (road) {
    const loco = locoOn(scene, road.road);
    const x = loco ? road.x(scene.locos[loco]?.atMm ?? 0) : NaN;
    return loco && Math.abs(x - at.x) < 40 ? loco : `road ${road.road}`;
  }
  const { deck, pinY } = layout;
  const onPin = Math.abs(at.y - pinY) < 16 && at.x > deck.x + deck.width - 90;
  return onPin && layout.plate.length > 0 ? 'pin' : undefined;
}

/** Whether a pointer has gone; what a finger has tapped stays lit. */
export const isGone = ({ pointerType }: PointerEvent): boolean => pointerType !== 'touch';

/** Where a pointer is in the drawing's own px, however large it is shown. */
export function inDrawing(
  { clientX, clientY, currentTarget }: PointerEvent,
  { width, height }: { readonly width: number; readonly height: number }
): Point {
  const box = (currentTarget as Element).getBoundingClientRect();
  return {
    x: ((clientX - box.left) * width) / box.width,
    y: ((clientY - box.top) * height) / box.height
  };
}
