import { once, placed, sidesOf, type Placed, type Run } from '../yard';
import type { Pair } from './moment';

/** One side of a part: that to which its run leads, or that from which it comes. */
interface Side {
  readonly part: string;
  readonly isFrom: boolean;
}

const placedOnce = once(placed);

/** The points of a moment, and the nodes that they are in runs which a fault has changed. */
export class Places {
  readonly ids: readonly string[];
  /** Each point as one side of a part; undefined where its node has its name. */
  private readonly sides: readonly (Side | undefined)[];
  private readonly sound: readonly string[];

  constructor(runs: readonly Run[], pairs: readonly Pair[]) {
    this.ids = [...new Set(pairs.flat())];
    const names = this.ids.map((id) => /^(.+) (panel|rail|fixed|deck) side$/.exec(id));
    const wanted = new Set(names.flatMap((name) => name?.[1] ?? []));
    const runOf = new Map(
      runs.flatMap((run) => run.parts.filter(({ id }) => wanted.has(id)).map(({ id }) => [id, run]))
    );
    this.sides = names.map((found) => {
      const [, part = '', side] = found ?? [];
      const run = runOf.get(part);
      if (!run) return undefined;
      const isNear = sidesOf(partIn(run, part))[0] === `${side} side`;
      return { part, isFrom: isNear === (run.job === 'feed') };
    });
    const concerned = [...new Set(runOf.values())];
    this.sound = this.in(concerned, this.ids);
  }

  private in(runs: readonly Run[], otherwise: readonly string[]): readonly string[] {
    const parts = new Map(runs.flatMap(placedOnce).map((part) => [part.id, part]));
    return this.ids.map((id, index) => {
      const side = this.sides[index];
      const part = side && parts.get(side.part);
      return (part && (side.isFrom ? part.from : part.to)) ?? otherwise[index] ?? id;
    });
  }

  /** The node of each point, with these runs in place of those that they were. */
  nodes(changed: readonly Run[]): readonly string[] {
    return changed.length === 0 ? this.sound : this.in(changed, this.sound);
  }
}

const partIn = (run: Run, part: string): Placed =>
  placedOnce(run).find(({ id }) => id === part) as Placed;
