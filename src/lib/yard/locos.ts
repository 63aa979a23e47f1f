import * as v from 'valibot';
import { quantity } from './border';

/** A loco's figures; every one has its unit in its name or is SI. */
export interface Loco {
  readonly name: string;
  readonly shape: (typeof shapes)[number];
  /** Armature resistance, Ω. */
  readonly ohms: number;
  /** Current when it runs light, A. */
  readonly lightAmps: number;
  /** Speed when it runs light at 12 V, m/s. */
  readonly lightSpeed: number;
  /** Mass, kg. */
  readonly mass: number;
  readonly lengthMm: number;
  /** From the first to the last wheel that picks up current, mm. */
  readonly pickupSpanMm: number;
}

const shapes = ['tank', 'tender', 'railcar', 'shunter', 'diesel'] as const;

/** The volts at which `lightSpeed` holds. */
export const RATED_VOLTS = 12;

/** Source: our own demo scenario (invented). */
const demo: readonly Loco[] = [
  {
    name: 'Plover',
    shape: 'tank',
    ohms: 20,
    lightAmps: 0.18,
    lightSpeed: 0.25,
    mass: 0.18,
    lengthMm: 95,
    pickupSpanMm: 30
  },
  {
    name: 'Heron',
    shape: 'tender',
    ohms: 18,
    lightAmps: 0.25,
    lightSpeed: 0.3,
    mass: 0.35,
    lengthMm: 210,
    pickupSpanMm: 60
  },
  {
    name: 'Curlew',
    shape: 'railcar',
    ohms: 22,
    lightAmps: 0.14,
    lightSpeed: 0.35,
    mass: 0.25,
    lengthMm: 245,
    pickupSpanMm: 160
  },
  {
    name: 'Dunlin',
    shape: 'shunter',
    ohms: 24,
    lightAmps: 0.12,
    lightSpeed: 0.18,
    mass: 0.15,
    lengthMm: 90,
    pickupSpanMm: 28
  },
  {
    name: 'Avocet',
    shape: 'diesel',
    ohms: 14,
    lightAmps: 0.35,
    lightSpeed: 0.4,
    mass: 0.5,
    lengthMm: 250,
    pickupSpanMm: 150
  }
];

/** Names of the demo locos. */
export const locoNames: readonly string[] = demo.map((loco) => loco.name);

/** Most locos of one's own. */
const MAX_OWN = 30;
const nameAllowed =
  'a name of one to 16 letters, figures and blanks which begins with a capital or a figure, and is no demo loco’s';
const figuresAllowed = 'pick-ups no longer than the loco, and less than 12 V to start it';

/** A loco of one's own; what is left out is as with the demo loco of that shape. */
const OwnLocoSchema = v.pipe(
  v.strictObject({
    shape: v.picklist(shapes, shapes.join(', ')),
    ohms: v.optional(quantity(1, 500, 'Ω')),
    lightAmps: v.optional(quantity(0.01, 3, 'A')),
    lightSpeed: v.optional(quantity(0.02, 2, 'm/s')),
    mass: v.optional(quantity(0.02, 5, 'kg')),
    lengthMm: v.optional(quantity(30, 800, 'mm')),
    pickupSpanMm: v.optional(quantity(5, 800, 'mm'))
  }),
  v.transform((own): Omit<Loco, 'name'> => {
    const like = demo.find(({ shape }) => shape === own.shape) as Loco;
    return {
      shape: own.shape,
      ohms: own.ohms ?? like.ohms,
      lightAmps: own.lightAmps ?? like.lightAmps,
      lightSpeed: own.lightSpeed ?? like.lightSpeed,
      mass: own.mass ?? like.mass,
      lengthMm: own.lengthMm ?? like.lengthMm,
      pickupSpanMm: own.pickupSpanMm ?? Math.min(like.pickupSpanMm, own.lengthMm ?? Infinity)
    };
  }),
  v.check(
    (loco) => loco.pickupSpanMm <= loco.lengthMm && startingVolts(loco) < RATED_VOLTS,
    figuresAllowed
  )
);

/** Locos of one's own, by name. */
export const OwnLocosSchema = v.pipe(
  v.record(
    v.pipe(
      v.string(),
      v.regex(/^(?=.{1,16}$)[\p{Lu}\p{N}][\p{L}\p{N}]*( [\p{L}\p{N}]+)*$/u, nameAllowed),
      v.check((name) => !locoNames.includes(name), nameAllowed)
    ),
    OwnLocoSchema
  ),
  v.check((all) => Object.keys(all).length <= MAX_OWN, `at most ${MAX_OWN} locos of your own`)
);

/** What has locos of its own: a yard. */
export interface WithLocos {
  readonly locos: v.InferOutput<typeof OwnLocosSchema>;
}

/** The locos that a yard knows: the demo's, then its own. */
export const locosOf = ({ locos }: WithLocos): readonly Loco[] => [
  ...demo,
  ...Object.entries(locos).map(([name, loco]) => ({ name, ...loco }))
];

/** The locos that run in a yard: its own, or the demo's where it has none. */
export const fleetOf = (yard: WithLocos): readonly Loco[] => {
  const own = locosOf(yard).slice(demo.length);
  return own.length > 0 ? own : demo;
};

/** The yard's loco called `name`; throws when there is none. */
export function locoIn(yard: WithLocos, name: string): Loco {
  const own = yard.locos[name];
  const loco = own ? { name, ...own } : demo.find((each) => each.name === name);
  if (loco) return loco;
  const there = [...locoNames, ...Object.keys(yard.locos)].join(', ');
  throw new RangeError(`Unknown loco '${name}'. There are ${there}.`);
}

/** The demo loco called `name`; throws when there is none. */
export const locoNamed = (name: string): Loco => locoIn({ locos: {} }, name);

/**
 * Volts that just start a loco: Coulomb friction takes the light current at any speed,
 * so U = I₀·R. Source: motor equations of a permanent-magnet DC motor (see tests/published).
 */
export const startingVolts = (loco: Pick<Loco, 'lightAmps' | 'ohms'>): number =>
  loco.lightAmps * loco.ohms;

/**
 * Back-EMF per speed, V·s/m, which is also pull per current, N/A:
 * k = (12 V − I₀·R) / v₀.
 */
export const motorConstant = (loco: Loco): number =>
  (RATED_VOLTS - startingVolts(loco)) / loco.lightSpeed;
