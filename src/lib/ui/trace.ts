import { locoOn } from '../draw';
import type { Reading, Scene, Why } from '../yard';

/** A stop on the way of the current, or towards the break. */
export interface TraceStop {
  readonly place: string;
  readonly words: string;
}

/** The loop of a road, stop by stop: out by the feed, through the loco, home by the return. */
export function stopsOf(reading: Reading, scene: Scene, road: string): readonly TraceStop[] {
  const why = reading.why(road);
  const loco = locoOn(scene, road);
  const out = why.feed.path.map((step) => step.id);
  const home = why.return.path.map((step) => step.id);
  const places = ['controller', ...out, ...(loco ? [loco] : []), ...home];
  const end = why.state === 'loop' ? places.length : cutAt(places, why);
  return places.slice(0, end).map((place, index) => ({
    place,
    words: stopWords(place, index, { loco, broken: why.breaks.includes(place) })
  }));
}

/** A broken way is followed as far as its first open place. */
function cutAt(places: readonly string[], { breaks }: Why): number {
  const first = places.findIndex((place) => breaks.includes(place));
  return first < 0 ? places.length : first + 1;
}

function stopWords(
  place: string,
  index: number,
  { loco, broken }: { readonly loco: string | undefined; readonly broken: boolean }
): string {
  if (index === 0) return 'Out of the controller';
  if (broken) return `Open at ${place}: no way on`;
  if (place === loco) return `Through ${place}, rail to rail`;
  return /^(toggle|meter|resistor|metal)/.test(place) ? `Through ${place}` : `Along the ${place}`;
}
