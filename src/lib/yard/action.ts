import * as v from 'valibot';
import { EditSchema } from './edits';
import { FaultSchema } from './faults';
import { holeAt } from './deck';
import {
  DeckSchema,
  fit,
  KnobSchema,
  PinSchema,
  PlugStateSchema,
  SceneSchema,
  SelectorSchema,
  SwitchSchema,
  type Scene
} from './scene';
import { locoNamed } from './locos';
import { roadNamed } from './road';
import type { Yard } from './yard';

/** What hands do to a scene: throw switches, turn the knobs, change wires and faults (a list replaces the old one). */
export const ActionSchema = v.pipe(
  v.strictObject({
    switch: v.optional(v.record(v.string(), SwitchSchema)),
    selector: v.optional(SelectorSchema),
    controller: v.optional(KnobSchema),
    second: v.optional(KnobSchema),
    deck: v.optional(DeckSchema),
    pin: v.optional(PinSchema),
    plug: v.optional(PlugStateSchema),
    edits: v.optional(v.array(EditSchema, 'a list of edits')),
    faults: v.optional(v.array(FaultSchema, 'a list of faults'))
  }),
  v.check(
    (action) => Object.keys(action).length > 0,
    'at least one of switch, selector, controller, second, deck, pin, plug, edits, faults'
  )
);
export type Action = Readonly<v.InferOutput<typeof ActionSchema>>;

/** Why hands cannot do something: the deck is pinned, or stock stands across its edge, or there is no hole. */
export class RefusedError extends Error {
  readonly code = 'refused';
  constructor(readonly why: string) {
    super(why);
    this.name = 'RefusedError';
  }
}

/** Stock across the deck's edge, or the pin, holds the deck. */
function mayMove(yard: Yard, scene: Scene, pin: Scene['pin']): void {
  if (pin === 'home') throw new RefusedError('The deck is pinned: pull the pin first.');
  const across = Object.entries(scene.locos).find(([name, { road, atMm }]) => {
    const half = locoNamed(name).lengthMm / 2;
    return atMm < half || atMm > roadNamed(yard, road).lengthMm - half;
  });
  if (across)
    throw new RefusedError(`${across[0]} stands across the deck's edge: move it clear first.`);
}

/**
 * The scene after the action. Hands pull the pin before the deck moves and push it home after.
 * @throws BorderError when the yard has no such toggle or place; RefusedError when it cannot be done.
 */
export function act(yard: Yard, scene: Scene, action: Action): Scene {
  const next = fit('action', yard, {
    ...scene,
    locos: {},
    controller: action.controller ?? scene.controller,
    second: action.second ?? scene.second,
    selector: action.selector ?? scene.selector,
    switches: { ...scene.switches, ...action.switch },
    deck: action.deck ?? scene.deck,
    pin: 'out',
    plug: action.plug ?? scene.plug,
    edits: action.edits ?? scene.edits,
    faults: action.faults ?? scene.faults
  });
  const moves = next.deck !== scene.deck;
  if (moves) mayMove(yard, scene, action.pin === undefined ? scene.pin : 'out');
  const pin = action.pin ?? scene.pin;
  if (pin === 'home' && !holeAt(yard, next.deck)) {
    throw new RefusedError('There is no hole here: the pin cannot go home.');
  }
  return { ...next, locos: scene.locos, pin };
}

/** Words, a whole scene, and what to light: lessons, walkthroughs and workshops are made of these. */
export const StepSchema = v.strictObject({
  words: v.string(),
  scene: SceneSchema,
  /** Names of places to light, three at most. */
  light: v.optional(v.pipe(v.array(v.string()), v.maxLength(3, 'three places at most')), [])
});
export type Step = Readonly<v.InferOutput<typeof StepSchema>>;
