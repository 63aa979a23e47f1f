/**
 * About how wide a letter is in type of this size, in the size's unit. Source: mean advance of the
 * alphabet in the site's typeface at weight 600, measured: 0.515 of its size.
 */
export const letterWidth = (size: number): number => 0.52 * size;
