/** What a solved circuit says. */
export interface Solution {
  /** Potential of a node against ground, V; undefined when no conducting path leads to ground. */
  volts(node: string): number | undefined;
  /** V(a) − V(b), V; undefined when no conducting path joins the nodes. */
  between(a: string, b: string): number | undefined;
  /** Current through an element from a to b, A; 0 for an open switch. */
  amps(id: string): number;
  /** Nodes without a conducting path to ground. */
  readonly floating: readonly string[];
  /** Ids of sources at their current limit. */
  readonly limiting: readonly string[];
}
