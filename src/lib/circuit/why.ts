import { kindOf } from './kinds';
import type { Circuit, Element } from './kinds';
import type { Solution } from './solution';
import { trace } from './trace';
import type { TraceOptions, TraceStep } from './trace';

/** One element of a path with what it drops. */
export interface Drop extends TraceStep {
  /** V(from) − V(to), V; undefined across an open switch between islands. */
  readonly volts: number | undefined;
  /** Does the path go through a load here: a loco's motor, a lamp? */
  readonly load: boolean;
}

/** Why a point has its voltage against another. */
export interface Why {
  /** V(point) − V(to), V: the sum of the drops; undefined when nothing joins them. */
  readonly volts: number | undefined;
  readonly drops: readonly Drop[];
  /** Open switches that keep the points apart. */
  readonly breaks: readonly string[];
  /** Loads that the only path goes through: a sneak path when they are another road's. */
  readonly through: readonly string[];
}

/** Does an element use what a circuit carries (a motor, a diode) rather than lead it on? */
export const isLoad = ({ kind }: Element): boolean => kindOf(kind)?.load === true;

/**
 * What each element of a path drops: V(from) − V(to), so that they add up to the whole path's.
 *
 * Errors: a `CircuitError` for a node that the solution does not hold.
 *
 * @example
 * drops(circuit, solve(circuit), trace(circuit, 'feed', 'rail A').path)
 * // [{ id: 'toggle A', from: 'feed', to: 'a1', volts: 0.01, load: false }, …]
 */
export function drops(
  circuit: Circuit,
  solution: Solution,
  path: readonly TraceStep[]
): readonly Drop[] {
  const loads = new Set(circuit.elements.filter(isLoad).map(({ id }) => id));
  return path.map((step) => ({
    ...step,
    volts: solution.between(step.from, step.to),
    load: loads.has(step.id)
  }));
}

/**
 * Why a point has its voltage: the way from it to ground (or `to`), and what each element drops.
 *
 * A way by conductors and sources alone is preferred; failing that, one through loads, named in
 * `through`; failing that, the way with the fewest open switches, named in `breaks`.
 *
 * Errors: a `CircuitError` for an unknown node.
 * Source: Kirchhoff's voltage law.
 *
 * @example
 * why(circuit, solve(circuit), 'rail A').drops.map(({ id, volts }) => [id, volts])
 * // [['toggle A', -0.01], ['feed wire', -0.02], ['controller', 12]]
 */
export function why(
  circuit: Circuit,
  solution: Solution,
  point: string,
  options: TraceOptions & { readonly to?: string } = {}
): Why {
  const { to = circuit.ground, avoid = () => false } = options;
  const conducting = trace(circuit, point, to, { avoid: (e) => isLoad(e) || avoid(e) });
  const found = conducting.joined ? conducting : trace(circuit, point, to, { avoid });
  const steps = drops(circuit, solution, found.path);
  return {
    volts: solution.between(point, to),
    drops: steps,
    breaks: found.joined ? [] : found.breaks,
    through: steps.filter(({ load }) => load).map(({ id }) => id)
  };
}
