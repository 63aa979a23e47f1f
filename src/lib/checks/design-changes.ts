import { admit, joinWords, roadsOf, roadTitle, YardSchema, type Yard } from '../yard';

/** A change of the design that may keep a loco from the gap, and how it is said. */
export interface DesignChange {
  readonly words: string;
  readonly yard: Yard;
}

/** Changes of the wiring that are worth trying for this yard, the cheapest first. */
export function designChanges(yard: Yard): readonly DesignChange[] {
  const changed = (change: Partial<Yard>) => admit('yard', YardSchema, { ...yard, ...change });
  const titles = (kind: 'running' | 'stabling') =>
    joinWords(
      [...new Set(roadsOf(yard).flatMap((road) => (road.kind === kind ? [road.whole] : [])))].map(
        (road) => roadTitle(yard, road)
      ),
      'and'
    );
  const ring = {
    words: 'Close the return to a ring: one more wire, from the last road home.',
    yard: changed({ return: 'ring' })
  };
  const pinned = {
    words: `Put a contact of the pin in the feed of ${titles('stabling')}, one for each.`,
    yard: changed({ interlocked: true })
  };
  const running = {
    words: `Feed ${titles('running')} through ${yard.switching === 'none' ? '' : 'a switch and '}the contacts of the running holes.`,
    yard: changed({ runningRoad: 'interlocked' })
  };
  return [
    ...(yard.return === 'chain' ? [ring] : []),
    ...(yard.stablingRoads > 0 && !yard.interlocked ? [pinned] : []),
    ...(yard.runningRoad === 'direct' ? [running] : [])
  ];
}
