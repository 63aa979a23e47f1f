import { dequal } from 'dequal/lite';

/**
 * Keeps lists steady from one moment to the next: an item that is as it was under its key is given as
 * the same object, so that what is drawn from it is not drawn again.
 */
export function steady<T extends { readonly key: string }>(): (
  items: readonly T[]
) => readonly T[] {
  let before = new Map<string, T>();
  return (items) => {
    const now = items.map((item) => {
      const was = before.get(item.key);
      return was && dequal(was, item) ? was : item;
    });
    before = new Map(now.map((item) => [item.key, item]));
    return now;
  };
}
