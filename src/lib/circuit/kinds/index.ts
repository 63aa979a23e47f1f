import type { CurrentSource } from './current';
import { current } from './current';
import type { Diode } from './diode';
import { diode } from './diode';
import type { Kind, Model } from './kind';
import type { Motor } from './motor';
import { motor } from './motor';
import type { Resistor } from './resistor';
import { resistor } from './resistor';
import type { Source } from './source';
import { source } from './source';
import type { Switch } from './switch';
import { contact } from './switch';

export type { CurrentSource, Diode, Kind, Model, Motor, Resistor, Source, Switch };

/** Any element of a circuit. */
export type Element = Resistor | Source | Switch | Diode | Motor | CurrentSource;

/** Elements between named nodes; `ground` is the node that volts are counted from. */
export interface Circuit {
  readonly ground: string;
  readonly elements: readonly Element[];
}

const all = [resistor, source, contact, diode, motor, current] as readonly Kind[];
const byName = new Map(all.map((kind) => [kind.kind, kind]));

/** The names of all kinds, for errors. */
export const kindNames: readonly string[] = all.map((kind) => kind.kind);

/** The kind of that name, or undefined. */
export const kindOf = (name: string): Kind | undefined => byName.get(name);

/** How people read an element: `Resistor R3`. */
export const nameOf = (element: Element): string =>
  `${byName.get(element.kind)?.noun ?? 'Element'} ${element.id}`;

/** The engine's view of an element. */
export function modelOf(element: Element): Model {
  const kind = byName.get(element.kind);
  if (kind === undefined) throw new RangeError(`No element kind '${element.kind}'.`);
  return kind.model(element);
}
