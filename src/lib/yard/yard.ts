import * as v from 'valibot';
import { scales, wireAreaMm2, type Scale } from '../tables';
import { count, quantity } from './border';
import { ColoursSchema } from './colours';
import { CutSchema, cutsAllowed, cutsFit } from './cuts';
import { OwnLocosSchema } from './locos';
import { lastDeckRoad, roads, runningEnds, wholeRoads, type Road, type RunningEnds } from './road';
import { MAX_ROTARY_ROADS, switchedRoads } from './switching';

/** Most storage roads and stabling roads of a yard. */
export const MAX_STORAGE = 40;
export const MAX_STABLING = 20;

const SupplySchema = v.strictObject({
  /** Volts at full knob. Above 24 V DC is refused: extra-low voltage only. */
  volts: v.optional(quantity(1, 24, 'V'), 12),
  /** Internal resistance, Ω. */
  ohms: v.optional(quantity(0, 100, 'Ω'), 0.5),
  /** Current at which the controller gives no more, A. */
  limitAmps: v.optional(quantity(0.05, 10, 'A'), 1.5)
});

const sizeAllowed = "a wire size such as '24/0.2' (strands/mm), '0.5 mm²' or 'AWG 22'";

function isSize(size: string): boolean {
  try {
    return wireAreaMm2(size) > 0;
  } catch {
    return false;
  }
}

const run = (size: string, lengthM: number) =>
  v.optional(
    v.strictObject({
      size: v.optional(v.pipe(v.string(), v.check(isSize, sizeAllowed)), size),
      /** Above 0: a ring of wires without resistance would have no one answer. */
      lengthM: v.optional(quantity(0.01, 50, 'm'), lengthM)
    }),
    {}
  );

const WiresSchema = v.strictObject({
  /** Controller to panel, and back to the first road. */
  main: run('24/0.2', 2),
  /** One hop of the feed on the panel, or of the common return from road to road. */
  link: run('24/0.2', 0.1),
  /** Toggle to rail, and rail to the common return. */
  dropper: run('16/0.2', 1.5),
  /** Panel lamp to its pole or its road's switch. */
  lamp: run('7/0.2', 0.5)
});

/** Contacts used side by side for the return. Source: common practice. */
const RETURN_CONTACTS = 2;
const PlugSchema = v.strictObject({
  returnContacts: v.optional(count(1, 8, 'contacts'), RETURN_CONTACTS)
});

const sharesAllowed = 'nothing (isolated supplies) or supply (one for both)';
/** A controller of its own for some roads, on the common return. */
const SecondSchema = v.strictObject({
  roads: v.array(v.pipe(v.union([v.string(), v.number()]), v.transform(String)), 'names of roads'),
  /** Its own supply; not used where the first one serves both. */
  supply: v.optional(SupplySchema, {}),
  shares: v.optional(v.picklist(['nothing', 'supply'], sharesAllowed), 'nothing')
});

const entries = {
  version: v.optional(v.literal(1), 1),
  name: v.optional(v.pipe(v.string(), v.maxLength(60, 'at most 60 characters')), 'Quillby Quay'),
  /** What is usual in it stands wherever no other length is given. */
  scale: v.optional(
    v.picklist(Object.keys(scales) as Scale[], Object.keys(scales).join(', ')),
    'OO/HO'
  ),
  /** The owner's own names, by the letter or number of the road. */
  names: v.optional(
    v.record(v.string(), v.pipe(v.string(), v.maxLength(24, 'at most 24 characters'))),
    {}
  ),
  /** Storage roads on the deck. */
  deckRoads: v.optional(count(1, MAX_STORAGE, 'deck roads'), 5),
  /** The deck road kept empty to let a loco out; it faces the stabling roads. */
  releaseRoad: v.optional(v.boolean('true or false')),
  /** The deck road that faces the stabling roads when the pin is home in their holes; the last one unless told. */
  facesStabling: v.optional(v.string('the letter of a deck road')),
  /** Fixed roads beyond the deck where locos wait. */
  stablingRoads: v.optional(count(0, MAX_STABLING, 'stabling roads'), 0),
  /** Whether the pin's contact stands in each stabling road's feed. */
  interlocked: v.optional(v.boolean('true or false'), true),
  /** The roads from the layout to the deck: none, fed straight from the controller, or through a toggle and the running holes' contacts. */
  runningRoad: v.optional(
    v.union(
      [
        v.picklist(['none', 'direct', 'interlocked']),
        v.pipe(
          v.boolean(),
          v.transform((there) => (there ? ('direct' as const) : ('none' as const)))
        )
      ],
      'none, direct or interlocked; true is direct'
    )
  ),
  /** Where running roads join the deck: one at an end, one at each, or two side by side at one end. */
  runningEnds: v.optional(
    v.picklist(Object.keys(runningEnds) as RunningEnds[], Object.keys(runningEnds).join(', '))
  ),
  /** What stands in each road's feed: a toggle, a position of one rotary selector, a sprung push; a running road fed straight has none. Without, every road is fed at once. */
  switching: v.optional(
    v.picklist(['toggles', 'rotary', 'pushes', 'none'], 'toggles, rotary, pushes or none'),
    'toggles'
  ),
  /** What a rotary selector does between two positions. */
  rotary: v.optional(
    v.picklist(
      ['break before make', 'make before break'],
      'break before make, or make before break'
    ),
    'break before make'
  ),
  /** A panel lamp for each switched road: on a supply of its own, or fed from its road. */
  lamps: v.optional(v.picklist(['none', 'own', 'track'], 'none, own or track'), 'none'),
  /** The isolated supply of lamps of their `own`. */
  lampSupply: v.optional(v.strictObject({ volts: v.optional(quantity(3, 24, 'V'), 12) }), {}),
  /** A second controller for some of the roads. */
  second: v.optional(SecondSchema),
  /** How the return goes: from road to road, back from the last as well, or from each road by itself. */
  return: v.optional(v.picklist(['chain', 'ring', 'star'], 'chain, ring or star'), 'chain'),
  /** The floating lead's plug; none where the deck is wired for good. */
  plug: v.optional(
    v.union(
      [
        PlugSchema,
        v.pipe(
          v.boolean(),
          v.transform((there) => (there ? { returnContacts: RETURN_CONTACTS } : (false as const)))
        )
      ],
      '{ returnContacts: 2 }, true or false'
    )
  ),
  roadLengthMm: v.optional(quantity(300, 3000, 'mm')),
  runningLengthMm: v.optional(quantity(300, 10000, 'mm'), 2400),
  stablingLengthMm: v.optional(quantity(150, 2000, 'mm')),
  centresMm: v.optional(quantity(30, 200, 'mm')),
  /** From the last storage road to the release road. */
  releaseCentresMm: v.optional(quantity(30, 300, 'mm')),
  /** From the line of the running road Q to the first stabling road. */
  stablingFromMm: v.optional(quantity(0, 1000, 'mm')),
  /** How far out of line still faces. */
  toleranceMm: v.optional(quantity(0.05, 2, 'mm')),
  /** Width of the opening which a fixed road leaves in the barrier. */
  openingMm: v.optional(quantity(5, 100, 'mm')),
  /** Insulated gaps: a cut road is two sections, each with a feed of its own. */
  cuts: v.optional(v.array(CutSchema, 'a list of cuts'), []),
  /** Fixed roads with a stop at their deck end, closed whenever nothing faces them. */
  endStops: v.optional(
    v.array(v.pipe(v.union([v.string(), v.number()]), v.transform(String)), 'a list of roads'),
    []
  ),
  /** Locos of one's own, beside those of the demo. */
  locos: v.optional(OwnLocosSchema, {}),
  supply: v.optional(SupplySchema, {}),
  wires: v.optional(WiresSchema, {}),
  /** Colours of the wires. */
  colours: v.optional(ColoursSchema, {})
};

/** Parts that come with a moving deck, and what is usual in the scale, unless the yard says otherwise. */
function complete(yard: v.InferOutput<v.StrictObjectSchema<typeof entries, undefined>>) {
  const runningRoad =
    yard.runningRoad ?? (yard.stablingRoads > 0 || yard.runningEnds ? 'direct' : 'none');
  const moves = yard.stablingRoads > 0 || runningRoad !== 'none';
  const usual = scales[yard.scale];
  const releaseRoad = yard.releaseRoad ?? yard.stablingRoads > 0;
  const centresMm = yard.centresMm ?? usual.centresMm;
  return {
    ...yard,
    centresMm,
    roadLengthMm: yard.roadLengthMm ?? usual.deckLengthMm,
    stablingLengthMm: yard.stablingLengthMm ?? usual.stablingLengthMm,
    releaseCentresMm: yard.releaseCentresMm ?? centresMm * 1.25,
    stablingFromMm: yard.stablingFromMm ?? Math.round((centresMm * 7) / 12),
    toleranceMm: yard.toleranceMm ?? usual.toleranceMm,
    openingMm: yard.openingMm ?? usual.openingMm,
    releaseRoad,
    facesStabling: yard.facesStabling ?? lastDeckRoad({ ...yard, releaseRoad }),
    runningRoad,
    runningEnds: yard.runningEnds ?? ('west' as const),
    plug: yard.plug ?? (moves ? { returnContacts: RETURN_CONTACTS } : (false as const))
  };
}

type Complete = ReturnType<typeof complete>;

/** South of the running road's line: the last stabling road, mm. */
const stablingSouth = ({ stablingRoads, stablingFromMm, centresMm }: Complete): number =>
  stablingRoads === 0 ? 0 : stablingFromMm + (stablingRoads - 1) * centresMm;

/** The deck road that is to face the stabling roads, if there is such a road. */
const facingRoad = (yard: Complete): Road | undefined =>
  wholeRoads(yard).find(({ name, bed }) => bed === 'deck' && name === yard.facesStabling);

/**
 * Whether the fixed roads beside each running road leave room for its opening in the barrier: a second
 * one at its end, and the first stabling road.
 */
function fitsEnds(yard: Complete): boolean {
  const fixed = wholeRoads(yard).filter(({ bed }) => bed !== 'deck');
  return fixed
    .filter(({ kind }) => kind === 'running')
    .every(({ name, bed, southMm }) =>
      fixed.every(
        (other) =>
          other.name === name ||
          other.bed !== bed ||
          Math.abs(other.southMm - southMm) >= yard.openingMm
      )
    );
}

/** Whether `some` names a part of `all`, each once. */
const isSome = (some: readonly string[], all: readonly string[]): boolean =>
  some.length > 0 &&
  some.length < all.length &&
  new Set(some).size === some.length &&
  some.every((name) => all.includes(name));

const fitsSecond = (yard: Complete): boolean =>
  !yard.second || isSome(yard.second.roads, roads(yard));

const fitsRotary = (yard: Complete): boolean =>
  yard.switching !== 'rotary' || switchedRoads(yard).length <= MAX_ROTARY_ROADS;

function stopsFit(yard: Complete): boolean {
  const fixed = wholeRoads(yard).filter(({ bed }) => bed !== 'deck');
  return yard.endStops.every((stop) => fixed.some(({ name }) => name === stop));
}

/** What is built. `{ deckRoads: 5, stablingRoads: 4 }` is a complete yard. */
export const YardSchema = v.pipe(
  v.strictObject(entries),
  v.transform(complete),
  v.forward(
    v.check((yard) => facingRoad(yard) !== undefined, 'the letter of a deck road of this yard'),
    ['facesStabling']
  ),
  v.check(
    (yard) => stablingSouth(yard) <= (facingRoad(yard)?.southMm ?? Infinity),
    'stabling roads no further south than the deck road that faces them can go'
  ),
  v.check(
    fitsEnds,
    'no fixed road nearer to a running road at its end than an opening of the barrier is wide'
  ),
  v.check(
    fitsRotary,
    `at most ${MAX_ROTARY_ROADS} roads on a rotary (one 12-way wafer, one position is off); take toggles for more`
  ),
  v.check(
    ({ lamps, switching }) => lamps === 'none' || ['toggles', 'rotary'].includes(switching),
    'lamps with toggles (second pole) or a rotary (second wafer) only'
  ),
  v.check(
    fitsSecond,
    'a second controller for some of the roads of this yard, each named once, and not for all'
  ),
  v.forward(
    v.check((yard) => cutsFit(yard.cuts, wholeRoads(yard)), cutsAllowed),
    ['cuts']
  ),
  v.forward(v.check(stopsFit, 'fixed roads of this yard: running or stabling roads'), ['endStops'])
);

export type Yard = Readonly<v.InferOutput<typeof YardSchema>>;
export type YardInput = v.InferInput<typeof YardSchema>;
