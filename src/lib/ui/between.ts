import type { Scene, Standing } from '../yard';

const mix = (from: number, to: number, share: number): number => from + (to - from) * share;

/** A vehicle that stays on its road rolls there; one that changes roads is there at once. */
function rolled<T extends Standing>(
  from: Readonly<Record<string, Standing>>,
  to: Readonly<Record<string, T>>,
  share: number
): Readonly<Record<string, T>> {
  return Object.fromEntries(
    Object.entries(to).map(([name, at]) => {
      const was = from[name];
      return [name, was?.road === at.road ? { ...at, atMm: mix(was.atMm, at.atMm, share) } : at];
    })
  );
}

/** A picture on the way from one scene to the next: the deck slides with its pin out, all else is as it will be. */
export const between = (from: Scene, to: Scene, share: number): Scene => ({
  ...to,
  locos: rolled(from.locos, to.locos, share),
  stock: rolled(from.stock, to.stock, share),
  deck: mix(from.deck, to.deck, share),
  pin: from.deck === to.deck ? to.pin : 'out'
});
