import type { OpenAt } from './atlas';
import { choicesOf, type Moment } from './moments';
import { handsFor, oddness, type Breach, type Ground } from './proof';
import type { View } from './view';

/** Where to ask about a road in a kind of moment, with the plug in or out. */
export interface Lookup {
  readonly viewFor: (road: string, kind: number) => View;
}

type Pins = readonly Moment['pin'][];

/**
 * The plainest state in which an end is live; of several the first. What is odd in itself, the pin out
 * above all, is tried last. Kinds of moment that join nothing to the road are alike: one is tried.
 */
export function plainest(
  { plugs, controls }: Ground,
  lookups: readonly Lookup[],
  openAt: OpenAt
): Breach | undefined {
  const { end } = openAt;
  let best: Breach | undefined;
  let least = Infinity;
  for (const pin of ['home', 'out'] as Pins) {
    plugs.forEach((plug, which) => {
      const lookup = lookups[which] as Lookup;
      if (least <= oddness({ pin, plug, across: [], hands: {} })) return;
      const tried = new Set<View>();
      for (const [kind, moment] of openAt[pin]) {
        const view = lookup.viewFor(end.road, kind);
        const own = view.isOwn(end.road, kind);
        if ((!own && tried.has(view)) || !view.bunch(end.road, kind)) continue;
        if (!own) tried.add(view);
        for (const across of own ? choicesOf(moment) : [[]]) {
          if (least <= oddness({ pin, plug, across, hands: {} })) continue;
          const hands = handsFor(view.cases(end.road, kind, across), controls);
          if (!hands) continue;
          const breach = { ...end, deckMm: moment.place.deckMm, pin, plug, hands, across };
          if (oddness(breach) >= least) continue;
          best = breach;
          least = oddness(breach);
        }
      }
    });
  }
  return best;
}
