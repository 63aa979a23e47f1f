import {
  admit,
  fit,
  holeAt,
  liveRoads,
  roadsOf,
  SceneSchema,
  switchedRoads,
  travel,
  wire,
  type Part,
  type Scene,
  type Yard
} from '../yard';

/** What a yard takes to build, and what one broken place in it does. */
export interface Tally {
  readonly toggles: number;
  readonly pinContacts: number;
  readonly plugContacts: number;
  readonly wires: number;
  readonly wireM: number;
  /** The broken wire that leaves most roads dead, and how many. */
  readonly worst: { readonly wire: string; readonly dead: number };
  /** Fixed roads that can be live while nothing faces them. */
  readonly unguarded: readonly string[];
}

/** Everything on: a working yard's fullest moment, the pin home at the first hole that there is. */
function allOn(yard: Yard, more: object = {}): Scene {
  const switches = Object.fromEntries(
    yard.switching === 'rotary' ? [] : switchedRoads(yard).map((road) => [road, true])
  );
  return fit('scene', yard, admit('scene', SceneSchema, { controller: 1, switches, ...more }));
}

/** A place of the deck at which it faces nothing, if it has one, mm. */
function between(yard: Yard): number | undefined {
  const { least } = travel(yard);
  const spots = Array.from({ length: 40 }, (_, index) => (least * (index + 0.5)) / 40);
  return least === 0 ? undefined : spots.find((deck) => !holeAt(yard, deck));
}

function unguarded(yard: Yard): readonly string[] {
  const deck = between(yard);
  if (deck === undefined) return [];
  const live = liveRoads(yard, allOn(yard, { deck, pin: 'out' }));
  return roadsOf(yard)
    .filter(({ bed, name }) => bed !== 'deck' && live.has(name))
    .map(({ name }) => name);
}

function worst(yard: Yard, wires: readonly Part[]): Tally['worst'] {
  const whole = liveRoads(yard, allOn(yard)).size;
  return wires
    .map(({ id }) => ({
      wire: id,
      dead: whole - liveRoads(yard, allOn(yard, { edits: [{ off: id }] })).size
    }))
    .reduce((most, each) => (each.dead > most.dead ? each : most), { wire: '', dead: 0 });
}

/** Counts a yard's parts, and asks the engine what each single broken wire does. */
export function tally(yard: Yard): Tally {
  const parts = wire(yard).flatMap((run) => run.parts);
  const of = (kind: Part['kind']) => parts.filter((part) => part.kind === kind);
  const wires = parts.filter((part) => part.wire);
  return {
    toggles: of('toggle').length,
    pinContacts: of('pin contact').length,
    plugContacts: of('plug').length,
    wires: wires.length,
    wireM: wires.reduce((sum, part) => sum + (part.wire?.lengthM ?? 0), 0),
    worst: worst(yard, wires),
    unguarded: unguarded(yard)
  };
}
