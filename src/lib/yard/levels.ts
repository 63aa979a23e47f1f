import { groups, type Circuit, type Element, type Groups, type Solution } from '../circuit';

/** What a conductor is joined to, as it is drawn. */
export interface Level {
  /**
   * `feed`, `feed 2` or `return`: by conductors alone. `lamp supply`: on the lamps' own island. `through`: only by way of a load.
   * `both`: feed meets return with nothing between. `nothing`: floating.
   */
  readonly joined: 'feed' | 'feed 2' | 'return' | 'lamp supply' | 'both' | 'through' | 'nothing';
  /** Share of its controller's volts, 0 at the return and 1 at the feed; undefined when floating. */
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

const terminals = ['feed', 'feed 2', 'return'] as const;

/** The level of every node, from what is joined to what and the volts the engine found. */
export function levels(circuit: Circuit, solution: Solution): ReadonlyMap<string, Level> {
  const joins = groups(circuit, isConductor);
  const nodes = new Set(joins.all.flat());
  const whole = (feed: string) => (nodes.has(feed) ? (solution.volts(feed) ?? 0) : 0);
  const short = (feed: string) => nodes.has(feed) && joins.joined(feed, 'return');
  const entries = joins.all.flatMap((group) => {
    const inside = new Set(group);
    const loads = circuit.elements.filter(
      (load) => isLoad(load) && inside.has(load.a) !== inside.has(load.b)
    );
    const through = loads.map((load) => load.id).filter((id) => !isGuard(id));
    const terminal = terminals.find((name) => inside.has(name));
    const beyond = loads.map(({ a, b }) => (inside.has(a) ? b : a));
    const full =
      terminal !== 'feed' && touchesSecond(joins, nodes, [...group.slice(0, 1), ...beyond])
        ? whole('feed 2')
        : whole('feed') || whole('feed 2');
    const meets = terminals.some((feed) => feed !== 'return' && inside.has(feed) && short(feed));
    return group.map((node): [string, Level] => {
      const volts = solution.volts(node);
      if (volts === undefined) return [node, apart(inside)];
      const joined = terminal ? (meets ? 'both' : terminal) : 'through';
      return [node, { joined, share: full === 0 ? undefined : volts / full, through }];
    });
  });
  return new Map(entries);
}

/** A guard lies across its lamp: naming the lamp is enough. */
const isGuard = (id: string): boolean => id.startsWith('lamp guard ');

/** The level of what shares no island with the return: the lamps' own supply, or nothing. */
const apart = (inside: ReadonlySet<string>): Level =>
  ['lamp +', 'lamp -'].some((terminal) => inside.has(terminal))
    ? { joined: 'lamp supply', share: undefined, through: [] }
    : floating;

const touchesSecond = (joins: Groups, nodes: ReadonlySet<string>, at: readonly string[]): boolean =>
  nodes.has('feed 2') && at.some((node) => joins.joined(node, 'feed 2'));

/** Whether conductors alone join the two poles of a supply that two controllers share. */
export function isSupplyShorted(circuit: Circuit): boolean {
  const joins = groups(circuit, isConductor);
  const poles = ['supply +', 'supply -'] as const;
  return joins.all.flat().includes(poles[0]) && joins.joined(...poles);
}
