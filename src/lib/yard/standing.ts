import * as v from 'valibot';

const placeAllowed = 'the letter of a road, or { road, atMm, faces, speed }';
const StandingSchema = v.strictObject({
  road: v.pipe(v.union([v.string(), v.number()], placeAllowed), v.transform(String)),
  /** Middle of the loco or other stock, mm from the road's west end. */
  atMm: v.optional(v.pipe(v.number(), v.finite())),
  faces: v.optional(v.picklist(['east', 'west'], 'east or west'), 'east'),
  /** Speed, m/s, east positive. */
  speed: v.optional(v.pipe(v.number(), v.finite()), 0),
  /** It lies in the gap. */
  fallen: v.optional(v.boolean(), false)
});

/** Where a loco stands: `A` is the middle of road A, facing east. */
export const PlaceSchema = v.union(
  [
    v.pipe(
      v.union([v.string(), v.number()]),
      v.transform((road) => v.parse(StandingSchema, { road: String(road) }))
    ),
    StandingSchema
  ],
  placeAllowed
);

const coupledTo = v.optional(v.string('the name of a loco or other stock'));
const stockPlaceAllowed =
  'the name of a road, { road, atMm }, or { behind: Heron } or { ahead: Heron }';

/**
 * Where other stock stands: as a loco does, or coupled behind or ahead of a loco (of other stock: on
 * the same side of it as its nose or its tail). What is coupled moves with it.
 */
export const StockPlaceSchema = v.union(
  [
    v.pipe(
      v.union([v.string(), v.number()]),
      v.transform((road) => ({ ...v.parse(StandingSchema, { road: String(road) }) }))
    ),
    v.pipe(
      v.strictObject({
        ...StandingSchema.entries,
        road: v.optional(StandingSchema.entries.road),
        behind: coupledTo,
        ahead: coupledTo,
        coupled: coupledTo
      }),
      v.check(
        ({ road, behind, ahead }) =>
          [road, behind, ahead].filter((each) => each !== undefined).length === 1,
        stockPlaceAllowed
      )
    )
  ],
  stockPlaceAllowed
);
export type Place = v.InferOutput<typeof PlaceSchema>;
/** A place as stock has it: a road, or what it is coupled to. */
export interface StockPlace extends Omit<Place, 'road'> {
  readonly road?: string | undefined;
  readonly behind?: string | undefined;
  readonly ahead?: string | undefined;
  readonly coupled?: string | undefined;
}

/** Where a vehicle stands and how fast it runs. */
export interface Standing {
  readonly road: string;
  readonly atMm: number;
  readonly faces: 'east' | 'west';
  /** Speed, m/s; above 0 it runs east. */
  readonly speed: number;
  readonly fallen: boolean;
}

/** Where other stock stands, and to what it is coupled. */
export interface StockStanding extends Standing {
  readonly coupled?: string | undefined;
}
