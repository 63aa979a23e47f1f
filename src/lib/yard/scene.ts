import * as v from 'valibot';
import { BorderError, met, type Finding } from './border';
import { EditSchema } from './edits';
import { faultFindings, FaultSchema } from './faults';
import { holeAt, holes, travel } from './deck';
import { placeAll } from './placing';
import { PlaceSchema, StockPlaceSchema, type Standing, type StockStanding } from './standing';
import { selectorStands, switchedRoads } from './switching';
import type { Yard } from './yard';

export type { Standing } from './standing';

const knobWords = /^(centre|(\d{1,3})\s*% (east|west))$/;
const knobAllowed = "'60% east', '40% west', 'centre' or a number from -1 (west) to 1 (east)";

const readKnob = (text: string): number => {
  const [, , percent, way] = knobWords.exec(text) ?? [];
  return percent === undefined ? 0 : (Number(percent) / 100) * (way === 'west' ? -1 : 1);
};

const inRange = v.pipe(
  v.number(knobAllowed),
  v.minValue(-1, knobAllowed),
  v.maxValue(1, knobAllowed)
);

/** The controller's knob, from −1 (full west) to +1 (full east). */
export const KnobSchema = v.union(
  [inRange, v.pipe(v.string(), v.regex(knobWords, knobAllowed), v.transform(readKnob), inRange)],
  knobAllowed
);

const switchAllowed = 'on or off';
/** A switch: on is closed. */
export const SwitchSchema = v.union(
  [
    v.boolean(),
    v.pipe(
      v.picklist(['on', 'off']),
      v.transform((word) => word === 'on')
    )
  ],
  switchAllowed
);

const pinAllowed = 'home or out';
/** The locating pin. Home can be said only where there is a hole. */
export const PinSchema = v.picklist(['home', 'out'], pinAllowed);
/** The controller's supply: plugged in, or not. */
export const SupplyStateSchema = v.picklist(['on', 'off'], switchAllowed);
/** The deck's plug. */
export const PlugStateSchema = v.picklist(['in', 'out'], 'in or out');
/**
 * Where the deck stands: the name of a hole, or mm (0 brings the first road to the running road,
 * negative is further north). A whole number above 0 is the name of a stabling road's hole.
 */
export const DeckSchema = v.union(
  [
    v.pipe(
      v.number(),
      v.finite(),
      v.transform((deck) => (deck > 0 ? String(deck) : deck))
    ),
    v.string()
  ],
  'the name of a hole, or mm'
);

/** The rotary selector: `off`, the name of a road, or between two neighbours such as `A-B`. */
export const SelectorSchema = v.pipe(
  v.union([v.string(), v.number()], 'off, the name of a road, or between two such as A-B'),
  v.transform(String)
);

/** A moment: knobs, switches, deck, pin, plug, locos, other stock, wire edits, faults. */
export const SceneSchema = v.strictObject({
  version: v.optional(v.literal(1), 1),
  controller: v.optional(KnobSchema, 0),
  /** Knob of the second controller. */
  second: v.optional(KnobSchema, 0),
  supply: v.optional(SupplyStateSchema, 'on'),
  /** Toggles that are on, or pushes that are held. */
  switches: v.optional(v.record(v.string(), SwitchSchema), {}),
  selector: v.optional(SelectorSchema, 'off'),
  deck: v.optional(DeckSchema, 0),
  pin: v.optional(PinSchema),
  plug: v.optional(PlugStateSchema, 'in'),
  locos: v.optional(v.record(v.string(), PlaceSchema), {}),
  stock: v.optional(v.record(v.string(), StockPlaceSchema), {}),
  edits: v.optional(v.array(EditSchema, 'a list of edits'), []),
  faults: v.optional(v.array(FaultSchema, 'a list of faults'), [])
});

type Admitted = v.InferOutput<typeof SceneSchema>;
export type Scene = Readonly<Omit<Admitted, 'locos' | 'stock' | 'deck' | 'pin'>> & {
  /** Deck position, mm. */
  readonly deck: number;
  readonly pin: 'home' | 'out';
  readonly locos: Readonly<Record<string, Standing>>;
  readonly stock: Readonly<Record<string, StockStanding>>;
};

/**
 * Fits an admitted scene to its yard: fills in where deck, pin, locos and other stock stand, and
 * refuses roads, locos, switches, knobs, holes and faults which the yard does not have, and two
 * vehicles in one place.
 * @throws BorderError
 */
export function fit(what: string, yard: Yard, scene: Admitted | Scene): Scene {
  const amiss = deckFindings(yard, scene);
  const deck = amiss.length > 0 ? 0 : deckMm(yard, scene.deck);
  const { findings: misplaced, ...standing } = placeAll(yard, deck, scene);
  const findings = [
    ...switchFindings(yard, scene),
    ...selectorFindings(yard, scene),
    ...secondFindings(yard, scene),
    ...amiss,
    ...misplaced,
    ...faultFindings(yard, scene.faults),
    ...ohmsFindings(scene)
  ];
  if (findings.length > 0) throw new BorderError(what, findings);
  const pin = scene.pin ?? (holeAt(yard, deck) ? 'home' : 'out');
  return { ...scene, ...standing, deck, pin };
}

/** The deck position that a hole's name means. */
function deckMm(yard: Yard, deck: number | string): number {
  return typeof deck === 'number'
    ? deck
    : (holes(yard).find((hole) => hole.name === deck)?.deckMm ?? Number.NaN);
}

function deckFindings(yard: Yard, scene: Admitted | Scene): Finding[] {
  const names = holes(yard).map(({ name }) => name);
  const deck = deckMm(yard, scene.deck);
  const { least, most } = travel(yard);
  if (!(deck >= least && deck <= most)) {
    const allowed = `${names.join(', ')}${names.length > 0 ? ', or ' : ''}${least} to ${most} mm`;
    return [{ path: ['deck'], met: met(scene.deck), allowed }];
  }
  return scene.pin === 'home' && !holeAt(yard, deck)
    ? [
        {
          path: ['pin'],
          met: 'home where there is no hole',
          allowed: `home at ${names.join(', ')}`
        }
      ]
    : [];
}

/** An ohmmeter is held to a yard without supply only. */
export const ohmsWithSupply = (scene: Pick<Scene, 'supply' | 'edits'>): boolean =>
  scene.supply === 'on' && scene.edits.some((edit) => 'ohms' in edit);

const ohmsFindings = (scene: Admitted | Scene): Finding[] =>
  ohmsWithSupply(scene)
    ? [
        {
          path: ['edits'],
          met: 'an ohmmeter with the supply on',
          allowed: 'ohms with supply: off'
        }
      ]
    : [];

function switchFindings(yard: Yard, scene: Admitted | Scene): Finding[] {
  const { switching } = yard;
  const allowed = switching === 'rotary' ? [] : switchedRoads(yard);
  const noun = switching === 'pushes' ? 'push' : 'toggle';
  const none = switching === 'pushes' ? 'no pushes in this yard' : 'no toggles in this yard';
  return Object.keys(scene.switches)
    .filter((road) => !allowed.includes(road))
    .map((road) => ({
      path: ['switches', road],
      met: `a ${noun} '${road}'`,
      allowed: allowed.join(', ') || none
    }));
}

function selectorFindings(yard: Yard, { selector }: Admitted | Scene): Finding[] {
  const stands = selectorStands(yard);
  if (selector === 'off' || stands.includes(selector)) return [];
  const allowed = stands.join(', ') || 'no selector in this yard';
  return [{ path: ['selector'], met: met(selector), allowed }];
}

const secondFindings = (yard: Yard, { second }: Admitted | Scene): Finding[] =>
  second === 0 || yard.second
    ? []
    : [{ path: ['second'], met: met(second), allowed: 'no second controller in this yard' }];
