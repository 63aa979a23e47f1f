import { admit, joinWords, roadsOf, roadTitle, YardSchema, type Yard } from '../yard';

/** A change of the design that may keep a loco from the gap, and how it is said. */
export interface DesignChange {
  readonly words: string;
  readonly change: Partial<Yard>;
  /** The yard with it. */
  readonly yard: Yard;
}

/** Changes of the wiring that are worth trying for this yard, the cheapest first. */
export function designChanges(yard: Yard): readonly DesignChange[] {
  const changed = (words: string, change: Partial<Yard>): DesignChange => ({
    words,
    change,
    yard: admit('yard', YardSchema, { ...yard, ...change })
  });
  const titles = (kind: 'running' | 'stabling') =>
    joinWords(
      [...new Set(roadsOf(yard).flatMap((road) => (road.kind === kind ? [road.whole] : [])))].map(
        (road) => roadTitle(yard, road)
      ),
      'and'
    );
  const ring = changed('Close the return to a ring: one more wire, from the last road home.', {
    return: 'ring'
  });
  const pinned = changed(
    `Put a contact of the pin in the feed of ${titles('stabling')}, one for each.`,
    { interlocked: true }
  );
  const running = changed(
    `Feed ${titles('running')} through ${yard.switching === 'none' ? '' : 'a switch and '}the contacts of the running holes.`,
    { runningRoad: 'interlocked' }
  );
  return [
    ...(yard.return === 'chain' ? [ring] : []),
    ...(yard.stablingRoads > 0 && !yard.interlocked ? [pinned] : []),
    ...(yard.runningRoad === 'direct' ? [running] : [])
  ];
}
