/** The items in their order, each once. */
export const unique = <T>(items: readonly T[]): readonly T[] =>
  items.filter((item, index) => items.indexOf(item) === index);
