import { letterWidth } from './letters';

/** A vehicle on a row: where its middle should be drawn, px. */
interface Wanted {
  readonly name: string;
  readonly x: number;
  readonly width: number;
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
  const room = wanted.reduce((sum, { width }) => sum + width + BETWEEN, 0);
  if (room > limits.east - limits.west) return new Map();
  const placed = [...wanted].sort((a, b) => a.x - b.x).map((each) => ({ ...each }));
  let west = limits.west - BETWEEN;
  for (const each of placed) {
    each.x = Math.max(each.x, west + BETWEEN + each.width / 2);
    west = each.x + each.width / 2;
  }
  let east = limits.east + BETWEEN;
  for (const each of placed.toReversed()) {
    each.x = Math.min(each.x, east - BETWEEN - each.width / 2);
    east = each.x - each.width / 2;
  }
  return new Map(placed.map(({ name, x }) => [name, x]));
}

/** What stands above each vehicle of a road: its name; where the road is too short for all, the first bears them all. */
export function titlesOn(
  names: readonly string[],
  { west, east }: { readonly west: number; readonly east: number }
): ReadonlyMap<string, string> {
  const all = names.join(', ');
  const isTight = names.length > 1 && all.length * letterWidth(15) > (east - west) / 2;
  return new Map(names.map((name, index) => [name, !isTight ? name : index === 0 ? all : '']));
}
