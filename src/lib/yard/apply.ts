import type { Circuit, Element } from '../circuit';
import { applyEdit, isHeld, type Edit } from './edits';
import { addByFaults, changeByFaults, faulted, type Fault } from './faults';
import type { Now } from './faults/kind';
import { holesAt } from './deck';
import { hangLamps, lampElement, lampSupply } from './lamps';
import { isProbe, probeElement } from './probe';
import { once } from './once';
import { roadsOf } from './road';
import { placed, type Part, type Placed, type Run } from './runs';
import type { Scene } from './scene';
import { controllerElements } from './second';
import { isOn } from './switching';
import { stockElements } from './wheels';
import { wire } from './wire';
import type { Yard } from './yard';

/** The roads, or sections, whose contacts the pin works: it is home in a hole of theirs. */
function pinned(yard: Yard, { pin, deck }: Scene): ReadonlySet<string> {
  const under = pin === 'home' ? holesAt(yard, deck).map(({ fixed }) => fixed) : [];
  const there = roadsOf(yard).filter(({ whole }) => under.includes(whole));
  return new Set(there.map(({ name }) => name));
}

/** Whether a contact is made: a road's switch and its lamp's pole by hand, a plug contact by the plug, a pin contact by the pin. */
function madeIn(yard: Yard, scene: Scene): (part: Part) => boolean {
  const home = pinned(yard, scene);
  return ({ id, kind }) => {
    const road = id.split(' ').at(-1) as string;
    if (kind === 'plug') return scene.plug === 'in';
    return kind === 'pin contact' ? home.has(road) : isOn(yard, scene, road);
  };
}

const isContact = ({ kind }: Part): boolean =>
  ['toggle', 'selector', 'push', 'plug', 'pin contact', 'lamp pole'].includes(kind);

/** What is known of a run: its contacts, and the same run with them set one way or another. */
const variantsOf = once((run: Run) => ({
  contacts: run.parts.filter(isContact),
  set: new Map<string, Run>()
}));

/** A run with its contacts set: the same object whenever they stand the same. */
function withContacts(run: Run, isMade: (part: Part) => boolean): Run {
  const { contacts, set } = variantsOf(run);
  if (contacts.length === 0) return run;
  const key = contacts.map((part) => (isMade(part) ? 'made' : 'open')).join(' ');
  const known = set.get(key) ?? {
    ...run,
    parts: run.parts.map((part) => (isContact(part) ? { ...part, closed: isMade(part) } : part))
  };
  set.set(key, known);
  return known;
}

/** The yard's runs with the scene's contacts set, and nothing else done to them. */
export function withHands(yard: Yard, scene: Scene): readonly Run[] {
  const isMade = madeIn(yard, scene);
  return wire(yard).map((run) => withContacts(run, isMade));
}

/** Runs whose contacts are set as these faults leave them, without any wire edit: what `apply` gives. */
export const spoilt = (set: readonly Run[], faults: readonly Fault[], now: Now): readonly Run[] =>
  hangLamps(faulted(set, faults, now), placed);

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

/** The elements of a run's parts, worked out anew. */
export const elementsIn = (run: Run): readonly Element[] => placed(run).map(element);

/** The elements of a run's parts. */
export const elementsOf = once(elementsIn);

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
      ...runs.flatMap(elementsOf),
      ...stockElements(yard, scene)
    ]
  };
}
