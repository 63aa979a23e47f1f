import * as v from 'valibot';
import { BorderError, met, type Finding } from './border';
import { EditSchema } from './edits';
import { faultFindings, FaultSchema } from './faults';
import { beyond, holeAt, holes, travel } from './deck';
import { locoNamed, locoNames } from './locos';
import { roadNamed, roads } from './road';
import { selectorStands, switchedRoads } from './switching';
import type { Yard } from './yard';

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

const placeAllowed = 'the letter of a road, or { road, atMm, faces, speed }';
const StandingSchema = v.strictObject({
  road: v.pipe(v.union([v.string(), v.number()], placeAllowed), v.transform(String)),
  /** Middle of the loco, mm from the road's west end. */
  atMm: v.optional(v.pipe(v.number(), v.finite())),
  faces: v.optional(v.picklist(['east', 'west'], 'east or west'), 'east'),
  /** Speed, m/s, east positive. */
  speed: v.optional(v.pipe(v.number(), v.finite()), 0),
  /** It lies in the gap. */
  fallen: v.optional(v.boolean(), false)
});

/** Where a loco stands: `A` is the middle of road A, facing east. */
const PlaceSchema = v.union(
  [
    v.pipe(
      v.union([v.string(), v.number()]),
      v.transform((road) => v.parse(StandingSchema, { road: String(road) }))
    ),
    StandingSchema
  ],
  placeAllowed
);

const pinAllowed = 'home or out';
/** The locating pin. Home can be said only where there is a hole. */
export const PinSchema = v.picklist(['home', 'out'], pinAllowed);
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

/** A moment: knobs, switches, deck, pin, plug, locos, wire edits, faults. */
export const SceneSchema = v.strictObject({
  version: v.optional(v.literal(1), 1),
  controller: v.optional(KnobSchema, 0),
  /** Knob of the second controller. */
  second: v.optional(KnobSchema, 0),
  /** Toggles that are on, or pushes that are held. */
  switches: v.optional(v.record(v.string(), SwitchSchema), {}),
  selector: v.optional(SelectorSchema, 'off'),
  deck: v.optional(DeckSchema, 0),
  pin: v.optional(PinSchema),
  plug: v.optional(PlugStateSchema, 'in'),
  locos: v.optional(v.record(v.string(), PlaceSchema), {}),
  edits: v.optional(v.array(EditSchema, 'a list of edits'), []),
  faults: v.optional(v.array(FaultSchema, 'a list of faults'), [])
});

type Admitted = v.InferOutput<typeof SceneSchema>;
/** Where a loco stands and how fast it runs. */
export interface Standing {
  readonly road: string;
  readonly atMm: number;
  readonly faces: 'east' | 'west';
  readonly speed: number;
  readonly fallen: boolean;
}
export type Scene = Readonly<Omit<Admitted, 'locos' | 'deck' | 'pin'>> & {
  /** Deck position, mm. */
  readonly deck: number;
  readonly pin: 'home' | 'out';
  readonly locos: Readonly<Record<string, Standing>>;
};

/**
 * Fits an admitted scene to its yard: fills in where deck, pin and locos stand, and refuses roads,
 * locos, switches, knobs, holes and faults which the yard does not have, and two locos on one road.
 * @throws BorderError
 */
export function fit(what: string, yard: Yard, scene: Admitted | Scene): Scene {
  const findings: Finding[] = [
    ...switchFindings(yard, scene),
    ...selectorFindings(yard, scene),
    ...secondFindings(yard, scene),
    ...deckFindings(yard, scene),
    ...locoFindings(yard, scene),
    ...faultFindings(yard, scene.faults)
  ];
  if (findings.length > 0) throw new BorderError(what, findings);
  const deck = deckMm(yard, scene.deck);
  const hole = holeAt(yard, deck);
  const locos = Object.fromEntries(
    Object.entries(scene.locos).map(([name, at]) => {
      const middle = roadNamed(yard, at.road).lengthMm / 2;
      const atMm = at.atMm ?? middle;
      return [
        name,
        { ...at, atMm: at.fallen ? atMm : within({ yard, deck, road: at.road }, name, atMm) }
      ];
    })
  );
  return { ...scene, deck, pin: scene.pin ?? (hole ? 'home' : 'out'), locos };
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

/** A road with the deck as it stands: what decides where its ends are. */
export interface Track {
  readonly yard: Yard;
  readonly deck: number;
  readonly road: string;
}

/** The nearest place on a road where a loco can be: its middle on the road, its body clear of barriers and backstops. */
export function within({ yard, deck, road }: Track, name: string, atMm: number): number {
  const half = locoNamed(name).lengthMm / 2;
  const inset = (end: 'west' | 'east') => {
    const { kind } = beyond(yard, deck, road, end);
    return kind === 'barrier' || kind === 'backstop' ? half : 0;
  };
  const { lengthMm } = roadNamed(yard, road);
  return Math.min(Math.max(atMm, inset('west')), lengthMm - inset('east'));
}

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

function locoFindings(yard: Yard, scene: Admitted | Scene): Finding[] {
  const placed: { readonly name: string; readonly road: string; readonly atMm: number }[] = [];
  const findings: Finding[] = [];
  for (const [name, { road, atMm }] of Object.entries(scene.locos)) {
    const path = ['locos', name];
    if (!locoNames.includes(name)) {
      findings.push({ path, met: `unknown loco '${name}'`, allowed: locoNames.join(', ') });
      continue;
    }
    if (!roads(yard).includes(road)) {
      findings.push({ path, met: `road '${road}'`, allowed: roads(yard).join(', ') });
      continue;
    }
    const at = atMm ?? roadNamed(yard, road).lengthMm / 2;
    const half = (other: string) => locoNamed(other).lengthMm / 2;
    const other = placed.find(
      (each) => each.road === road && Math.abs(each.atMm - at) < half(name) + half(each.name) - 1e-6
    );
    if (other) {
      findings.push({
        path,
        met: `road ${road}, where ${other.name} stands`,
        allowed: 'a road of its own'
      });
    }
    placed.push({ name, road, atMm: at });
  }
  return findings;
}
