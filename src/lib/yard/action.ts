import * as v from 'valibot';
import { EditSchema } from './edits';
import { couple, CoupleSchema } from './couple';
import { FaultSchema } from './faults';
import { holeAt } from './deck';
import { RefusedError } from './refused';
import {
  DeckSchema,
  fit,
  KnobSchema,
  ohmsWithSupply,
  PinSchema,
  PlugStateSchema,
  SelectorSchema,
  SupplyStateSchema,
  SwitchSchema,
  type Scene
} from './scene';
import { roadNamed } from './road';
import type { Standing } from './standing';
import { trainsOf, vehicleIn, vehicles } from './vehicles';
import type { Yard } from './yard';

/** What hands do to a scene: throw switches, turn the knobs, change wires and faults (a list replaces the old one). */
export const ActionSchema = v.pipe(
  v.strictObject({
    switch: v.optional(v.record(v.string(), SwitchSchema)),
    selector: v.optional(SelectorSchema),
    controller: v.optional(KnobSchema),
    second: v.optional(KnobSchema),
    supply: v.optional(SupplyStateSchema),
    deck: v.optional(DeckSchema),
    pin: v.optional(PinSchema),
    plug: v.optional(PlugStateSchema),
    couple: v.optional(CoupleSchema),
    edits: v.optional(v.array(EditSchema, 'a list of edits')),
    faults: v.optional(v.array(FaultSchema, 'a list of faults'))
  }),
  v.check(
    (action) => Object.keys(action).length > 0,
    'at least one of switch, selector, controller, second, supply, deck, pin, plug, couple, edits, faults'
  )
);
export type Action = Readonly<v.InferOutput<typeof ActionSchema>>;

/** Stock across the deck's edge, a train coupled across it, or the pin, holds the deck. */
function mayMove(yard: Yard, scene: Scene, pin: Scene['pin']): void {
  if (pin === 'home') throw new RefusedError('The deck is pinned: pull the pin first.');
  const all = vehicles(scene);
  const across = Object.entries(all).find(([name, at]) => isAcross(yard, name, at));
  const bedOf = (name: string) => roadNamed(yard, all[name]?.road as string).bed;
  const parted = trainsOf(scene).find((train) =>
    train.some((each) => bedOf(each) !== bedOf(train[0]))
  );
  const name = across?.[0] ?? parted?.[0];
  if (name) throw new RefusedError(`${name} stands across the deck's edge: move it clear first.`);
}

/** Whether a vehicle's body reaches over an end of the deck, or of a fixed road towards it. */
function isAcross(yard: Yard, name: string, { road, atMm }: Standing): boolean {
  const half = vehicleIn(yard, name).lengthMm / 2;
  const { lengthMm, next } = roadNamed(yard, road);
  return (!next.west && atMm < half) || (!next.east && atMm > lengthMm - half);
}

/** Ohms are measured with the supply off only. */
function mayMeasure(scene: Scene, { supply = scene.supply, edits = scene.edits }: Action): void {
  if (!ohmsWithSupply({ supply, edits })) return;
  throw new RefusedError(
    scene.supply === 'off'
      ? 'The ohmmeter is still on the wires: take it off before you switch the supply on.'
      : 'The supply is on: switch it off before you measure ohms.'
  );
}

/**
 * The scene after the action. Hands pull the pin before the deck moves and push it home after.
 * @throws BorderError when the yard has no such toggle or place; RefusedError when it cannot be done.
 */
export function act(yard: Yard, scene: Scene, action: Action): Scene {
  mayMeasure(scene, action);
  const next = fit('action', yard, {
    ...scene,
    locos: {},
    stock: {},
    controller: action.controller ?? scene.controller,
    second: action.second ?? scene.second,
    selector: action.selector ?? scene.selector,
    supply: action.supply ?? scene.supply,
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
  const stock = action.couple ? couple(yard, scene, action.couple) : scene.stock;
  return { ...next, locos: scene.locos, stock, pin };
}
