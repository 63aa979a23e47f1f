import { groups, type Circuit, type Element, type Solution } from '../circuit';

/** What a conductor is joined to, as it is drawn. */
export interface Level {
  /**
   * `feed` or `return`: by conductors alone. `through`: only by way of a load.
   * `both`: feed meets return with nothing between. `nothing`: floating.
   */
  readonly joined: 'feed' | 'return' | 'both' | 'through' | 'nothing';
  /** Share of the controller's volts, 0 at the return and 1 at the feed; undefined when floating. */
  readonly share: number | undefined;
  /** The loads by way of which a `through` conductor has its level. */
  readonly through: readonly string[];
}

/** Level of a node that is joined to nothing. */
export const floating: Level = { joined: 'nothing', share: undefined, through: [] };

const isLoad = ({ kind, id }: Element): boolean =>
  kind === 'motor' || kind === 'diode' || id === 'test lamp';
const isConductor = (element: Element): boolean =>
  !isLoad(element) &&
  (element.kind === 'resistor' || (element.kind === 'switch' && element.closed));

/** The level of every node, from what is joined to what and the volts the engine found. */
export function levels(circuit: Circuit, solution: Solution): ReadonlyMap<string, Level> {
  const joins = groups(circuit, isConductor);
  const short = joins.joined('feed', 'return');
  const whole = solution.volts('feed') ?? 0;
  const entries = joins.all.flatMap((group) => {
    const inside = new Set(group);
    const through = circuit.elements
      .filter((load) => isLoad(load) && inside.has(load.a) !== inside.has(load.b))
      .map((load) => load.id);
    const terminal = (['feed', 'return'] as const).find((name) => inside.has(name));
    return group.map((node): [string, Level] => {
      const volts = solution.volts(node);
      if (volts === undefined) return [node, floating];
      const joined = terminal ? (short ? 'both' : terminal) : 'through';
      return [node, { joined, share: whole === 0 ? undefined : volts / whole, through }];
    });
  });
  return new Map(entries);
}
