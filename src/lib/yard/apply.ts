import type { Circuit, Element } from '../circuit';
import { applyEdit } from './edits';
import { locoNamed, motorConstant } from './locos';
import { placed, type Placed, type Run } from './runs';
import type { Scene } from './scene';
import { wire } from './wire';
import type { Yard } from './yard';

/** The yard's runs with the scene's contacts set and its wire edits made. */
export function apply(yard: Yard, scene: Scene): readonly Run[] {
  const set = wire(yard).map((run) => ({
    ...run,
    parts: run.parts.map((part) =>
      part.kind === 'toggle'
        ? { ...part, closed: scene.switches[run.road as string] ?? false }
        : part
    )
  }));
  return scene.edits.reduce<readonly Run[]>(applyEdit, set);
}

const element = ({ id, from, to, kind, ohms, closed }: Placed): Element =>
  kind === 'resistor'
    ? { kind, id, a: from, b: to, ohms }
    : { kind: 'switch', id, a: from, b: to, closed, ohms };

const motors = (scene: Scene): readonly Element[] =>
  Object.entries(scene.locos).map(([name, { road, speed }]) => {
    const loco = locoNamed(name);
    return {
      kind: 'motor',
      id: name,
      a: `feed rail ${road}`,
      b: `return rail ${road}`,
      ohms: loco.ohms,
      emf: motorConstant(loco) * speed
    };
  });

/**
 * The circuit of a scene. Each part, the controller and each loco is one element of the same name.
 * The feed rail is the south one, which is on the right of a loco going east: so volts from feed to
 * return drive east. Source: NEM 631:1985 cl. 2.3; NMRA S-9.
 */
export function circuitOf(yard: Yard, scene: Scene, runs = apply(yard, scene)): Circuit {
  const { volts, ohms, limitAmps } = yard.supply;
  return {
    ground: 'return',
    elements: [
      {
        kind: 'source',
        id: 'controller',
        a: 'feed',
        b: 'return',
        volts: volts * scene.controller,
        ohms,
        limit: limitAmps
      },
      ...runs.flatMap(placed).map(element),
      ...motors(scene)
    ]
  };
}
