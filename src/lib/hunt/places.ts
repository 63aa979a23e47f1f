import type { Element } from '../circuit';
import { elementsOf, sidesOf, type Run } from '../yard';
import type { Pair } from './moment';

/** One side of a part. */
interface Side {
  readonly part: string;
  /** Whether it is the one from which the part's run comes. */
  readonly isFrom: boolean;
}

/** The points of a moment, and the nodes that they are where a fault has moved parts. */
export class Places {
  readonly ids: readonly string[];
  /** Each point as one side of a part; undefined where its node has its name. */
  private readonly sides: readonly (Side | undefined)[];
  private readonly sound: readonly string[];

  constructor(runs: readonly Run[], pairs: readonly Pair[]) {
    this.ids = [...new Set(pairs.flat())];
    const names = this.ids.map((id) => /^(.+) (panel|rail|fixed|deck) side$/.exec(id));
    const wanted = new Set(names.flatMap((name) => name?.[1] ?? []));
    const found = new Map(
      runs.flatMap((run) =>
        run.parts.filter(({ id }) => wanted.has(id)).map((part) => [part.id, { run, part }])
      )
    );
    this.sides = names.map((name) => {
      const [, id = '', side] = name ?? [];
      const { run, part } = found.get(id) ?? {};
      if (!run || !part) return undefined;
      const isNear = sidesOf(part)[0] === `${side} side`;
      return { part: id, isFrom: isNear === (run.job === 'feed') };
    });
    const concerned = new Set([...found.values()].map(({ run }) => run));
    this.sound = this.in([...concerned].flatMap(elementsOf), this.ids);
  }

  private in(elements: readonly Element[], otherwise: readonly string[]): readonly string[] {
    const byId = new Map(elements.map((element) => [element.id, element]));
    return this.ids.map((id, index) => {
      const side = this.sides[index];
      const element = side && byId.get(side.part);
      return (element && (side.isFrom ? element.a : element.b)) ?? otherwise[index] ?? id;
    });
  }

  /** The node of each point, with these elements moved. */
  nodes(moved: readonly Element[]): readonly string[] {
    return moved.length === 0 ? this.sound : this.in(moved, this.sound);
  }
}
