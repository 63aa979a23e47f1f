import { locoOn } from '../draw';
import { feedOf, type Why } from '../yard';
import type { View } from './session.svelte';

/** A stop on the way of the current, or towards the break. */
export interface TraceStop {
  readonly place: string;
  readonly words: string;
}

/**
 * The loop of a road, stop by stop: out of the controller, through the loco, home again, the way
 * the current goes. A broken way is followed as far as its first open place. Where both rails reach
 * the same terminal there is no way to follow.
 */
export function stopsOf(
  { yard, reading, scene }: Pick<View, 'yard' | 'reading' | 'scene'>,
  road: string
): readonly TraceStop[] {
  const why = reading.why(road);
  const second = feedOf(yard, road) === 'feed 2';
  if (why.state === 'one ink') return [];
  const loco = locoOn(scene, road);
  const out = why.feed.path.map((step) => step.id);
  const home = why.return.path.map((step) => step.id);
  const way = [...out, ...(loco ? [loco] : []), ...home];
  const back = (reading.between(feedOf(yard, road), 'return') ?? 0) < 0;
  const places = [second ? 'controller 2' : 'controller', ...(back ? way.reverse() : way)];
  const end = why.state === 'loop' ? places.length : cutAt(places, why);
  return places.slice(0, end).map((place, index) => ({
    place,
    words: stopWords(place, index, { loco, broken: why.breaks.includes(place) })
  }));
}

function cutAt(places: readonly string[], { breaks }: Why): number {
  const first = places.findIndex((place) => breaks.includes(place));
  return first < 0 ? places.length : first + 1;
}

function stopWords(
  place: string,
  index: number,
  { loco, broken }: { readonly loco: string | undefined; readonly broken: boolean }
): string {
  if (index === 0)
    return place === 'controller 2' ? 'Out of controller 2' : 'Out of the controller';
  if (broken) return `Open at ${place}: no way on`;
  if (place === loco) return `Through ${place}, rail to rail`;
  if (place.startsWith('meter ')) return `Through the meter '${place.slice(6)}'`;
  if (place.startsWith('resistor')) return `Through the ${place}`;
  return /^(toggle|selector|push|metal)/.test(place) ? `Through ${place}` : `Along the ${place}`;
}
