import { outlineOf } from './locoShape';

/** A vehicle on a row: where its middle should be drawn, px. */
interface Wanted {
  readonly name: string;
  readonly x: number;
}

/** Between two vehicles of one row, px. */
const BETWEEN = 2;

/**
 * Where the vehicles of one row are drawn, px: in their order along the road, beside each other
 * although their outlines are longer than they are; none where the row has no room for that.
 */
export function spread(
  wanted: readonly Wanted[],
  limits: { readonly west: number; readonly east: number }
): ReadonlyMap<string, number> {
  const half = (name: string) => outlineOf(name).width / 2;
  const room = wanted.reduce((sum, { name }) => sum + outlineOf(name).width + BETWEEN, 0);
  if (room > limits.east - limits.west) return new Map();
  const placed = [...wanted].sort((a, b) => a.x - b.x).map((each) => ({ ...each }));
  let west = limits.west - BETWEEN;
  for (const each of placed) {
    each.x = Math.max(each.x, west + BETWEEN + half(each.name));
    west = each.x + half(each.name);
  }
  let east = limits.east + BETWEEN;
  for (const each of placed.toReversed()) {
    each.x = Math.min(each.x, east - BETWEEN - half(each.name));
    east = each.x - half(each.name);
  }
  return new Map(placed.map(({ name, x }) => [name, x]));
}
