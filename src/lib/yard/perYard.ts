/** A function of a yard that is worked out once for each yard object; what it gives is never changed. */
export function perYard<Y extends object, T>(make: (yard: Y) => T): (yard: Y) => T {
  const kept = new WeakMap<Y, { readonly made: T }>();
  return (yard) => {
    const known = kept.get(yard) ?? { made: make(yard) };
    kept.set(yard, known);
    return known.made;
  };
}
