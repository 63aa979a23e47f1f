import type { Circuit, Element } from '../circuit';
import { applyEdit, isHeld, type Edit } from './edits';
import { addByFaults, changeByFaults, type Fault } from './faults';
import type { Now } from './faults/kind';
import { holesAt } from './deck';
import { hangLamps, lampElement, lampSupply } from './lamps';
import { isProbe, probeElement } from './probe';
import { roadNamed } from './road';
import { placed, type Part, type Placed, type Run } from './runs';
import type { Scene } from './scene';
import { controllerElements } from './second';
import { isOn } from './switching';
import { stockElements } from './wheels';
import { wire } from './wire';
import type { Yard } from './yard';

/** Whether a contact is made: a road's switch and its lamp's pole by hand, a plug contact by the plug, a pin contact by the pin home in its hole. */
function isMade(yard: Yard, scene: Scene, part: Part): boolean {
  const road = part.id.split(' ').at(-1) as string;
  if (part.kind === 'plug') return scene.plug === 'in';
  if (part.kind !== 'pin contact') return isOn(yard, scene, road);
  if (scene.pin !== 'home') return false;
  const { whole } = roadNamed(yard, road);
  return holesAt(yard, scene.deck).some(({ fixed }) => fixed === whole);
}

const isContact = ({ kind }: Part): boolean =>
  ['toggle', 'selector', 'push', 'plug', 'pin contact', 'lamp pole'].includes(kind);

/** The yard's runs with the scene's contacts set, and nothing else done to them. */
export const withHands = (yard: Yard, scene: Scene): readonly Run[] =>
  wire(yard).map((run) => ({
    ...run,
    parts: run.parts.map((part) =>
      isContact(part) ? { ...part, closed: isMade(yard, scene, part) } : part
    )
  }));

/** Runs whose contacts are set as these faults leave them, without any wire edit: what `apply` gives. */
export const spoilt = (set: readonly Run[], faults: readonly Fault[], now: Now): readonly Run[] =>
  hangLamps(addByFaults(changeByFaults(set, faults, now), faults, now), placed);

/** The yard's runs with the scene's contacts set, its faults in and its wire edits made. */
export function apply(yard: Yard, scene: Scene): readonly Run[] {
  const set = withHands(yard, scene);
  const now = { yard, deckMm: scene.deck };
  const made = (edits: readonly Edit[], to: readonly Run[]) => edits.reduce(applyEdit, to);
  const held = scene.edits.filter(isHeld);
  const wired = scene.edits.filter((edit) => !isHeld(edit));
  const edited = made(wired, changeByFaults(set, scene.faults, now));
  return made(held, hangLamps(addByFaults(edited, scene.faults, now), placed));
}

function element(part: Placed): Element {
  const { id, from, to, kind, ohms, closed } = part;
  if (isProbe(id)) return probeElement(part);
  if (kind === 'resistor') return { kind, id, a: from, b: to, ohms };
  if (closed && (kind === 'lamp' || kind === 'lamp guard')) return lampElement(part);
  return { kind: 'switch', id, a: from, b: to, closed, ohms };
}

/**
 * The circuit of a scene. Each part, each controller and each loco is one element of the same name.
 * The feed rail is the south one, which is on the right of a loco going east: so volts from feed to
 * return drive east. Source: NEM 631:1985 cl. 2.3; NMRA S-9.
 */
export function circuitOf(yard: Yard, scene: Scene, runs = apply(yard, scene)): Circuit {
  return {
    ground: 'return',
    elements: [
      ...controllerElements(yard, scene),
      ...lampSupply(yard),
      ...runs.flatMap(placed).map(element),
      ...stockElements(yard, scene)
    ]
  };
}
