/** A loco's figures; every one has its unit in its name or is SI. Source: our own demo scenario (invented). */
export interface Loco {
  readonly name: string;
  readonly shape: 'tank' | 'tender' | 'railcar' | 'shunter' | 'diesel';
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

/** The volts at which `lightSpeed` holds. */
export const RATED_VOLTS = 12;

const stock: readonly Loco[] = [
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
export const locoNames: readonly string[] = stock.map((loco) => loco.name);

/** The loco called `name`; throws when there is none. */
export function locoNamed(name: string): Loco {
  const loco = stock.find((each) => each.name === name);
  if (!loco) throw new RangeError(`Unknown loco '${name}'. There are ${locoNames.join(', ')}.`);
  return loco;
}

/**
 * Volts that just start a loco: Coulomb friction takes the light current at any speed,
 * so U = I₀·R. Source: motor equations of a permanent-magnet DC motor (see tests/published).
 */
export const startingVolts = (loco: Loco): number => loco.lightAmps * loco.ohms;

/**
 * Back-EMF per speed, V·s/m, which is also pull per current, N/A:
 * k = (12 V − I₀·R) / v₀.
 */
export const motorConstant = (loco: Loco): number =>
  (RATED_VOLTS - startingVolts(loco)) / loco.lightSpeed;
