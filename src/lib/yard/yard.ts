import * as v from 'valibot';
import { wireAreaMm2 } from '../tables';
import { quantity } from './border';

/** Most deck roads this form of the yard knows. */
export const MAX_ROADS = 12;
const letters = 'ABCDEFGHIJKL';

/** Name of the running road, where there is one. */
export const RUNNING_ROAD = 'Q';

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
  dropper: run('16/0.2', 1.5)
});

/** What is built. `{ deckRoads: 4 }` is a complete yard. */
export const YardSchema = v.strictObject({
  version: v.optional(v.literal(1), 1),
  name: v.optional(v.pipe(v.string(), v.maxLength(60)), 'Quillby Quay'),
  deckRoads: v.optional(
    v.pipe(
      v.number('a whole number of roads'),
      v.integer('a whole number of roads'),
      v.minValue(1, `1 to ${MAX_ROADS} deck roads`),
      v.maxValue(MAX_ROADS, `1 to ${MAX_ROADS} deck roads`)
    ),
    5
  ),
  /** The road that leads from the layout to the deck, fed straight from the controller. */
  runningRoad: v.optional(v.boolean('true or false'), false),
  /** One toggle for each deck road, in its feed. Without, every road is fed at once. */
  toggles: v.optional(v.boolean('true or false'), true),
  /** How the return goes from road to road. */
  return: v.optional(v.picklist(['chain', 'ring'], 'chain or ring'), 'chain'),
  roadLengthMm: v.optional(quantity(300, 3000, 'mm'), 1200),
  centresMm: v.optional(quantity(30, 200, 'mm'), 60),
  supply: v.optional(SupplySchema, {}),
  wires: v.optional(WiresSchema, {})
});

export type Yard = Readonly<v.InferOutput<typeof YardSchema>>;
export type YardInput = v.InferInput<typeof YardSchema>;

/** Names of the deck roads, north to south: A, B, C … */
export const deckRoads = (yard: Yard): readonly string[] => [...letters.slice(0, yard.deckRoads)];

/** Names of all roads in the order in which feed and return visit them. */
export const roads = (yard: Yard): readonly string[] =>
  yard.runningRoad ? [RUNNING_ROAD, ...deckRoads(yard)] : deckRoads(yard);

/** Whether the road has a toggle of its own. */
export const hasToggle = (yard: Yard, road: string): boolean =>
  yard.toggles && road !== RUNNING_ROAD;
