import { sidesOf, type Run } from '../yard';
import type { Pair } from './moment';

/** One side of a part: that to which its run leads, or that from which it comes. */
interface Side {
  readonly part: string;
  readonly isFrom: boolean;
}

/** The node on one side of a part; undefined where these runs do not have it. */
function endOf(runs: readonly Run[], { part, isFrom }: Side): string | undefined {
  for (const run of runs) {
    const index = run.parts.findIndex(({ id }) => id === part);
    if (index < 0) continue;
    const at = isFrom ? index : index + 1;
    return at === 0 ? run.from : at === run.parts.length ? run.to : `${run.id} ${at}`;
  }
  return undefined;
}

/** The points of a moment, and the nodes that they are in runs which a fault has changed. */
export class Places {
  readonly ids: readonly string[];
  /** Each point as one side of a part; undefined where its node has its name. */
  private readonly sides: readonly (Side | undefined)[];
  private readonly sound: readonly string[];

  constructor(runs: readonly Run[], pairs: readonly Pair[]) {
    this.ids = [...new Set(pairs.flat())];
    const parts = new Map(
      runs.flatMap((run) => run.parts.map((part) => [part.id, { part, run }] as const))
    );
    this.sides = this.ids.map((id) => {
      const [, name = '', side] = /^(.+) (panel|rail|fixed|deck) side$/.exec(id) ?? [];
      const found = parts.get(name);
      if (!found) return undefined;
      const isNear = sidesOf(found.part)[0] === `${side} side`;
      return { part: name, isFrom: isNear === (found.run.job === 'feed') };
    });
    this.sound = this.in(runs, this.ids);
  }

  private in(runs: readonly Run[], otherwise: readonly string[]): readonly string[] {
    return this.ids.map((id, index) => {
      const side = this.sides[index];
      return (side && endOf(runs, side)) ?? otherwise[index] ?? id;
    });
  }

  /** The node of each point, with these runs in place of those that they were. */
  nodes(changed: readonly Run[]): readonly string[] {
    return changed.length === 0 ? this.sound : this.in(changed, this.sound);
  }
}
