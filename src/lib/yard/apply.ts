import type { Circuit, Element } from '../circuit';
import { applyEdit, isHeld } from './edits';
import { holesAt } from './deck';
import { isProbe, probeElement } from './probe';
import { placed, type Part, type Placed, type Run } from './runs';
import type { Scene } from './scene';
import { stockElements } from './wheels';
import { wire } from './wire';
import type { Yard } from './yard';

/** Whether a contact is made: a toggle by hand, a plug contact by the plug, a pin contact by the pin home in its hole. */
function isMade(yard: Yard, scene: Scene, part: Part): boolean {
  const road = part.id.split(' ').at(-1) as string;
  if (part.kind === 'toggle') return scene.switches[road] ?? false;
  if (part.kind === 'plug') return scene.plug === 'in';
  return scene.pin === 'home' && holesAt(yard, scene.deck).some(({ fixed }) => fixed === road);
}

const isContact = ({ kind }: Part): boolean =>
  kind === 'toggle' || kind === 'plug' || kind === 'pin contact';

/** The yard's runs with the scene's contacts set and its wire edits made. */
export function apply(yard: Yard, scene: Scene): readonly Run[] {
  const set = wire(yard).map((run) => ({
    ...run,
    parts: run.parts.map((part) =>
      isContact(part) ? { ...part, closed: isMade(yard, scene, part) } : part
    )
  }));
  const { edits } = scene;
  return [...edits.filter((edit) => !isHeld(edit)), ...edits.filter(isHeld)].reduce<readonly Run[]>(
    applyEdit,
    set
  );
}

function element(part: Placed): Element {
  const { id, from: a, to: b, kind, ohms, closed } = part;
  if (isProbe(id)) return probeElement(part);
  return kind === 'resistor'
    ? { kind, id, a, b, ohms }
    : { kind: 'switch', id, a, b, closed, ohms };
}

/** The controller; switched off it is unplugged: nothing joins its terminals. */
function controller({ supply }: Yard, scene: Scene): Element {
  const ends = { id: 'controller', a: 'feed', b: 'return' };
  const { volts, ohms, limitAmps: limit } = supply;
  return scene.supply === 'off'
    ? { kind: 'switch', ...ends, closed: false, ohms }
    : { kind: 'source', ...ends, volts: volts * scene.controller, ohms, limit };
}

/**
 * The circuit of a scene. Each part, the controller and each loco is one element of the same name.
 * The feed rail is the south one, which is on the right of a loco going east: so volts from feed to
 * return drive east. Source: NEM 631:1985 cl. 2.3; NMRA S-9.
 */
export function circuitOf(yard: Yard, scene: Scene, runs = apply(yard, scene)): Circuit {
  return {
    ground: 'return',
    elements: [
      controller(yard, scene),
      ...runs.flatMap(placed).map(element),
      ...stockElements(yard, scene)
    ]
  };
}
