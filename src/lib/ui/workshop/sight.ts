/** Letters that are at least this share of the distance high are read with ease. Source: common practice. */
const SHARE = 1 / 200;

/** Widths of pictures on a wall, m. */
export const pictureWidths = [1.2, 1.6, 2, 2.5, 3] as const;

/** Greys between the lightest and the darkest, both included. */
export const GREYS = 10;

/**
 * From how far letters can be read, m: capitals of `capitalPx` on a screen `screenPx` wide, shown
 * `widthM` wide.
 */
export const readableFrom = (capitalPx: number, screenPx: number, widthM: number): number =>
  ((capitalPx / screenPx) * widthM) / SHARE;
