/** An object of plain data. */
export type Plain = Readonly<Record<string, unknown>>;

export const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The same data in one form: keys in order, no undefined, no negative zero. */
export function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (isPlain(value)) {
    const keys = Object.keys(value).filter((key) => value[key] !== undefined);
    return Object.fromEntries(keys.sort().map((key) => [key, ordered(value[key])]));
  }
  return value === 0 ? 0 : value;
}

type Path = readonly (string | number)[];

function at(value: unknown, path: Path): unknown {
  return path.reduce<unknown>((inside, key) => (inside as Record<string, unknown>)[key], value);
}

/** The value without what stands at `path`. */
function without(value: unknown, [key, ...rest]: Path): unknown {
  if (Array.isArray(value)) {
    return value.map((each, index) => (index === key ? without(each, rest) : each));
  }
  const entries = Object.entries(value as Plain);
  return Object.fromEntries(
    rest.length === 0
      ? entries.filter(([name]) => name !== key)
      : entries.map(([name, each]) => [name, name === key ? without(each, rest) : each])
  );
}

/**
 * The least of `value` that still means the same: each key is left out, from the outside in, where
 * `means` says the same text without it.
 */
export function pruned(value: unknown, means: (value: unknown) => string | undefined): unknown {
  const meaning = means(value);
  let least = value;
  const visit = (path: Path): void => {
    const inside = at(least, path);
    if (Array.isArray(inside)) inside.forEach((_, index) => visit([...path, index]));
    else if (isPlain(inside)) Object.keys(inside).forEach((key) => leaveOut([...path, key]));
  };
  const leaveOut = (path: Path): void => {
    const less = without(least, path);
    if (means(less) === meaning) least = less;
    else visit(path);
  };
  visit([]);
  return least;
}
