/** The same function, which works its value out once for each object it is asked about: none of them ever changes. */
export function once<K extends object, T>(work: (about: K) => T): (about: K) => T {
  const known = new WeakMap<K, { readonly value: T }>();
  return (about) => {
    const before = known.get(about);
    if (before) return before.value;
    const value = work(about);
    known.set(about, { value });
    return value;
  };
}
