import type { Box } from './geometry';

/** Arm of a corner, px. */
const ARM = 8;

/** Path of the four corners of a box: the mark of what has changed. */
export function cornersOf({ x, y, width, height }: Box): string {
  const arm = Math.min(ARM, width / 3, height / 3);
  const [east, south] = [x + width, y + height];
  return [
    `M${x} ${y + arm}V${y}H${x + arm}`,
    `M${east - arm} ${y}H${east}V${y + arm}`,
    `M${east} ${south - arm}V${south}H${east - arm}`,
    `M${x + arm} ${south}H${x}V${south - arm}`
  ].join('');
}

/** The boxes without those that are there already: several places may share one. */
export const unlike = (boxes: readonly Box[]): readonly Box[] =>
  boxes.filter(
    (box, index) =>
      boxes.findIndex(({ x, y, width }) => x === box.x && y === box.y && width === box.width) ===
      index
  );
