import { vehicles } from '../yard';
import { boxAt, type Box } from './geometry';
import { outlineOf } from './locoShape';
import type { RowsSubject } from './rowsView';

type Subject = Pick<RowsSubject, 'yard' | 'layout' | 'scene'>;

/** Half of the room around a part, px. */
const HALF = 22;

/** The box around a controller, a road's rails or a vehicle; undefined for any other place. */
export function largeBox({ yard, layout, scene }: Subject, place: string): Box | undefined {
  const controller = layout.controllers[['controller', 'controller 2'].indexOf(place)];
  if (controller) {
    const { x, y, width, height } = controller;
    return { x: x - 5, y: y - 5, width: width + 10, height: height + 10 };
  }
  const at = vehicles(scene)[place];
  const row = layout.rows.find(({ road }) => road === at?.road || place === `road ${road}`);
  if (!row) return undefined;
  const [top, low] = [row.returnRail.y - 14, row.feedRail.y + 14];
  const { west, east } = layout.rails;
  if (!at) return { x: west - 6, y: top, width: east - west + 12, height: low - top };
  const half = outlineOf(yard, place).width / 2;
  const middle = Math.min(Math.max(layout.x(at.road, at.atMm), west + half), east - half);
  return { x: middle - half - 6, y: row.feedRail.y - 46, width: 2 * half + 12, height: 54 };
}

/** The box around any place on the rows; undefined for one that is not drawn there. */
export function boxAround(subject: Subject, place: string): Box | undefined {
  const anchor = subject.layout.anchors.get(place);
  return largeBox(subject, place) ?? (anchor && boxAt({ ...anchor, y: anchor.y - 4 }, HALF));
}
