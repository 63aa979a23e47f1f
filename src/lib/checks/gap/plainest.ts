import type { OpenAt } from './atlas';
import type { Moment } from './moments';
import { handsIn } from './live';
import { handsFor, oddness, type Breach, type Ground } from './proof';
import { handWork } from './settings';
import type { View } from './view';

/** Where to ask about a road in a kind of moment, with the plug in or out. */
export interface Lookup {
  readonly viewFor: (road: string, kind: number) => View;
}

/** Choices of joints across which locos stand, by index, the plainest first: none, one, all. */
function choicesOf({ place: { joints } }: Moment): readonly (readonly number[])[] {
  const all = joints.map((_, at) => at);
  return [[], ...(all.length > 1 ? all.map((at) => [at]) : []), ...(all.length > 0 ? [all] : [])];
}

/** The plainest state found so far, and how odd it is. */
class Plainest {
  best: Breach | undefined;
  #least = Infinity;

  /** Whether no state can be plainer that is at least so odd. */
  beats(odd: number): boolean {
    return this.#least <= odd;
  }
  take(breach: Breach): void {
    const odd = oddness(breach);
    if (this.beats(odd)) return;
    this.best = breach;
    this.#least = odd;
  }
}

/** A kind of moment in which an end is open. */
interface Try {
  readonly view: View;
  readonly kind: number;
  readonly moment: Moment;
  readonly plug: Breach['plug'];
}

/** Takes the plainest state of one kind of moment. No choice of joints needs fewer hands than wheels across all. */
function tryKind(
  found: Plainest,
  { end }: OpenAt,
  { controls }: Ground,
  { view, kind, moment, plug }: Try
): void {
  const { pin, place } = moment;
  const odd = (across: Breach['across']) => oddness({ pin, plug, across, hands: {} });
  const bunch = view.bunch(end.road, kind);
  if (!bunch) return;
  const fewest = handsIn(bunch.fewest ?? [], controls);
  for (const choice of view.isOwn(end.road, kind) ? choicesOf(moment) : [[]]) {
    const across = choice.map((at) => place.joints[at] as Breach['across'][number]);
    if (found.beats(odd(across) + handWork(fewest))) continue;
    const isWhole = choice.length === place.joints.length || !view.isOwn(end.road, kind);
    const hands = isWhole ? fewest : handsFor(view.cases(end.road, kind, choice), controls);
    if (hands) found.take({ ...end, deckMm: place.deckMm, pin, plug, hands, across });
  }
}

/**
 * The plainest state in which an end is live; of several the first. What is odd in itself, the pin out
 * above all, is tried last. Kinds of moment that join nothing to the road are alike: one is tried.
 */
export function plainest(
  ground: Ground,
  lookups: readonly Lookup[],
  openAt: OpenAt
): Breach | undefined {
  const { road } = openAt.end;
  const found = new Plainest();
  for (const pin of ['home', 'out'] as const) {
    ground.plugs.forEach((plug, which) => {
      if (found.beats(oddness({ pin, plug, across: [], hands: {} }))) return;
      const plain = new Set<View>();
      for (const [kind, moment] of openAt[pin]) {
        const view = (lookups[which] as Lookup).viewFor(road, kind);
        const own = view.isOwn(road, kind);
        if (!own && plain.has(view)) continue;
        if (!own) plain.add(view);
        tryKind(found, openAt, ground, { view, kind, moment, plug });
      }
    });
  }
  return found.best;
}
