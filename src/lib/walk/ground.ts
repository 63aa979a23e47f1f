import { way } from '../motion';
import { answer, play, type Question } from '../predict';
import {
  admit,
  BorderError,
  facing,
  feedOf,
  fit,
  fleetOf,
  holes,
  locosOf,
  roadsOf,
  SceneSchema,
  switchedRoads,
  type Action,
  type Road,
  type Scene,
  type Yard
} from '../yard';
import type * as v from 'valibot';

/** A scene as it is written: what is left out has its default. */
export type SceneInput = v.InferInput<typeof SceneSchema>;
/** Knobs of both controllers, −1 to 1. */
interface Knobs {
  readonly controller?: number;
  readonly second?: number;
}

/** What an outline is made on: a yard, its roads, and who stands where. */
export interface Ground {
  readonly yard: Yard;
  /** The first two deck roads. */
  readonly one: Road;
  readonly two: Road | undefined;
  /** A road beyond the deck where a loco waits. */
  readonly shed: Road | undefined;
  /** Locos on these roads. */
  readonly first: string;
  readonly second: string | undefined;
  readonly waiting: string | undefined;
  /** Where the deck stands: the hole of a road that is not the first, where there is one. */
  readonly deck: number;
  /** The way in which everything is driven: west where a shed's loco would then come out. */
  readonly way: 'west' | 'east';
}

/** Knob for a movement: brisk, not full. Source: common practice. */
const BRISK = 0.6;

const SETTINGS = { west: -BRISK, east: BRISK, centre: 0 } as const;

/** All knobs turned one way, or to centre. */
export const knobs = (yard: Yard, to: keyof typeof SETTINGS): Knobs => ({
  controller: SETTINGS[to],
  ...(yard.second ? { second: SETTINGS[to] } : {})
});

/** The knob of the controller that feeds a road, and no other. */
export const knobOf = (yard: Yard, road: string, to: keyof typeof SETTINGS): Knobs =>
  feedOf(yard, road) === 'feed 2' ? { second: SETTINGS[to] } : { controller: SETTINGS[to] };

/** These roads switched on, and no others. */
export function switched(yard: Yard, on: readonly string[]): SceneInput {
  if (yard.switching === 'rotary') return { selector: on[0] ?? 'off' };
  const there = switchedRoads(yard).filter((road) => on.includes(road));
  return { switches: Object.fromEntries(there.map((road) => [road, true])) };
}

/** What hands do to switch one road on: a rotary leaves its last road, a toggle leaves all others. */
export const switchOn = (yard: Yard, road: string): Action =>
  yard.switching === 'rotary' ? { selector: road } : { switch: { [road]: true } };

/** A scene of the outline: who stands where, with the rest as it is given. */
export function sceneOf(
  { yard, one, two, shed, first, second, waiting, deck, way }: Ground,
  given: SceneInput
): Scene {
  const locos = {
    [first]: one.name,
    ...(two && second ? { [second]: two.name } : {}),
    ...(shed && waiting ? { [waiting]: shed.name } : {}),
    ...given.locos
  };
  const whole = admit('scene', SceneSchema, { ...knobs(yard, way), deck, ...given, locos });
  return fit('scene', yard, whole);
}

/** Whether a scene can be made at all: a loco may be longer than its road. */
export function can<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof BorderError)) throw error;
    return undefined;
  }
}

/** Whether a loco that is left alone in a scene is seen to run. */
export const runs = (yard: Yard, scene: Scene, loco: string): boolean =>
  way(play(yard, scene, undefined), loco) !== 'stays';

/** The engine's answer about one thing asked. */
export const saysOf = (yard: Yard, scene: Scene, question: Question, name: string): string =>
  answer(question, yard, scene).answers[name] as string;

const fits = (yard: Yard, loco: string, road: Road): boolean =>
  can(() => fit('scene', yard, admit('scene', SceneSchema, { locos: { [loco]: road.name } }))) !==
  undefined;

/** Places for the deck, mm: its stops, then half way between them. */
export function places(yard: Yard): readonly number[] {
  const stops = [...new Set(holes(yard).map(({ deckMm }) => deckMm))];
  const inOrder = stops.toSorted((a, b) => b - a);
  const between = inOrder.slice(1).map((stop, index) => ((inOrder[index] as number) + stop) / 2);
  return [...stops, ...between];
}

/** Whether a road faces no other with the deck here. */
export const isAlone = (yard: Yard, deckMm: number, road: string): boolean =>
  facing(yard, deckMm).every(({ deckRoad, fixed }) => deckRoad !== road && fixed !== road);

/** Reads from a yard what an outline needs. */
export function groundOf(yard: Yard): Ground {
  const all = roadsOf(yard);
  const beds = all.filter(({ bed, next }) => bed === 'deck' && !next.west);
  const [one, two] = beds as [Road, Road | undefined];
  const shed = all.find(({ kind, next }) => kind === 'stabling' && !next.west);
  const names = [...new Set([...fleetOf(yard), ...locosOf(yard)].map(({ name }) => name))];
  const first = names.find((name) => fits(yard, name, one)) as string;
  const second = two && names.find((name) => name !== first && fits(yard, name, two));
  const waiting =
    shed && names.find((name) => ![first, second].includes(name) && fits(yard, name, shed));
  const quiet = [one, two, shed].flatMap((road) => road?.name ?? []);
  const deck = places(yard).find((at) => quiet.every((road) => isAlone(yard, at, road)));
  return {
    yard,
    one,
    two,
    shed,
    first,
    second,
    waiting,
    deck: deck ?? places(yard)[0] ?? 0,
    way: shed ? 'west' : 'east'
  };
}
