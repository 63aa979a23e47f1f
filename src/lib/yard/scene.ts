import * as v from 'valibot';
import { BorderError, type Finding } from './border';
import { EditSchema } from './edits';
import { locoNamed, locoNames } from './locos';
import { hasToggle, roads, type Yard } from './yard';

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
  road: v.string(placeAllowed),
  /** Middle of the loco, mm from the road's west end. */
  atMm: v.optional(v.pipe(v.number(), v.finite())),
  faces: v.optional(v.picklist(['east', 'west'], 'east or west'), 'east'),
  /** Speed, m/s, east positive. */
  speed: v.optional(v.pipe(v.number(), v.finite()), 0)
});

/** Where a loco stands: `A` is the middle of road A, facing east. */
const PlaceSchema = v.union(
  [
    v.pipe(
      v.string(),
      v.transform((road) => v.parse(StandingSchema, { road }))
    ),
    StandingSchema
  ],
  placeAllowed
);

/** A moment: knob, switches, locos, wire edits. */
export const SceneSchema = v.strictObject({
  version: v.optional(v.literal(1), 1),
  controller: v.optional(KnobSchema, 0),
  switches: v.optional(v.record(v.string(), SwitchSchema), {}),
  locos: v.optional(v.record(v.string(), PlaceSchema), {}),
  edits: v.optional(v.array(EditSchema, 'a list of edits'), [])
});

type Admitted = v.InferOutput<typeof SceneSchema>;
/** Where a loco stands and how fast it runs. */
export interface Standing {
  readonly road: string;
  readonly atMm: number;
  readonly faces: 'east' | 'west';
  readonly speed: number;
}
export type Scene = Readonly<Omit<Admitted, 'locos'>> & {
  readonly locos: Readonly<Record<string, Standing>>;
};

/**
 * Fits an admitted scene to its yard: fills in where locos stand, and refuses roads, locos and
 * toggles which the yard does not have, and two locos on one road (this form knows one a road).
 * @throws BorderError
 */
export function fit(what: string, yard: Yard, scene: Admitted): Scene {
  const findings: Finding[] = [...switchFindings(yard, scene), ...locoFindings(yard, scene)];
  if (findings.length > 0) throw new BorderError(what, findings);
  const middle = yard.roadLengthMm / 2;
  const locos = Object.fromEntries(
    Object.entries(scene.locos).map(([name, at]) => [
      name,
      { ...at, atMm: within(yard, name, at.atMm ?? middle) }
    ])
  );
  return { ...scene, locos };
}

/** The nearest place on its road where the whole loco has rails under it, mm. */
export function within(yard: Yard, name: string, atMm: number): number {
  const half = locoNamed(name).lengthMm / 2;
  return Math.min(Math.max(atMm, half), yard.roadLengthMm - half);
}

function switchFindings(yard: Yard, scene: Admitted): Finding[] {
  const allowed = roads(yard).filter((road) => hasToggle(yard, road));
  return Object.keys(scene.switches)
    .filter((road) => !allowed.includes(road))
    .map((road) => ({
      path: ['switches', road],
      met: `a toggle '${road}'`,
      allowed: allowed.join(', ') || 'no toggles in this yard'
    }));
}

function locoFindings(yard: Yard, scene: Admitted): Finding[] {
  const taken = new Map<string, string>();
  const findings: Finding[] = [];
  for (const [name, { road }] of Object.entries(scene.locos)) {
    const path = ['locos', name];
    const other = taken.get(road);
    if (!locoNames.includes(name)) {
      findings.push({ path, met: `unknown loco '${name}'`, allowed: locoNames.join(', ') });
    } else if (!roads(yard).includes(road)) {
      findings.push({ path, met: `road '${road}'`, allowed: roads(yard).join(', ') });
    } else if (other) {
      findings.push({
        path,
        met: `road ${road}, where ${other} stands`,
        allowed: 'a road of its own'
      });
    }
    taken.set(road, name);
  }
  return findings;
}
