/** The value under a key, worked out once. */
export function valueAt<T>(known: Map<string, T>, key: string, work: () => T): T {
  if (known.has(key)) return known.get(key) as T;
  const value = work();
  known.set(key, value);
  return value;
}
