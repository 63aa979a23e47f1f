/** The same function, which works its value out once for each object it is asked about: none of them ever changes. */
export function once<K extends object, T>(work: (about: K) => T): (about: K) => T {
  const known = new WeakMap<K, { readonly value: T }>();
  return (about) => {
    const value = known.get(about) ?? { value: work(about) };
    known.set(about, value);
    return value.value;
  };
}
