import { locoIn, type WithLocos } from './locos';
import type { Scene } from './scene';
import type { Standing } from './standing';

/** Stock without a motor, by the first word of its name: `coach`, `wagon 2`. */
export interface Stock {
  readonly lengthMm: number;
  /** From its first to its last wheel, mm. */
  readonly wheelSpanMm: number;
  /** Mass, kg. */
  readonly mass: number;
  /**
   * What lies between its wheels. `lit`: wheels of one rail are joined by a wire from end to end, and
   * a lamp of so many ohms stands between the rails. `plain`: each wheel by itself, no way across.
   */
  readonly wheels: { readonly kind: 'lit'; readonly ohms: number } | { readonly kind: 'plain' };
}

/**
 * A bogie coach of 57 ft with two filament bulbs of 12 V, 50 mA, hot; a four-wheel wagon of 10 ft
 * wheelbase. Lengths over buffers at 4 mm to the foot. Source: common practice.
 */
const kinds: Readonly<Record<string, Stock>> = {
  coach: { lengthMm: 240, wheelSpanMm: 190, mass: 0.15, wheels: { kind: 'lit', ohms: 120 } },
  wagon: { lengthMm: 80, wheelSpanMm: 40, mass: 0.04, wheels: { kind: 'plain' } }
};

/** How other stock may be named. */
export const stockAllowed = 'coach or wagon, or coach 2, wagon 3 …';

const stockName = /^(coach|wagon)( [1-9]\d?)?$/;

/** The figures of other stock; undefined when `name` is no such name. */
export const stockNamed = (name: string): Stock | undefined => {
  const [, kind] = stockName.exec(name) ?? [];
  return kind === undefined ? undefined : kinds[kind];
};

/** What all vehicles have, locos and other stock. */
export interface Vehicle {
  readonly lengthMm: number;
  readonly wheelSpanMm: number;
  /** Mass, kg. */
  readonly mass: number;
}

/** A yard's loco, or other stock, called `name`; throws when there is none. */
export function vehicleIn(yard: WithLocos, name: string): Vehicle {
  const stock = stockNamed(name);
  if (stock) return stock;
  const { lengthMm, pickupSpanMm: wheelSpanMm, mass } = locoIn(yard, name);
  return { lengthMm, wheelSpanMm, mass };
}

/** A vehicle's name at the start of a sentence: "Heron", "The coach", "Coach 2". */
export const vehicleWords = (name: string): string =>
  /^[a-z]+$/.test(name) ? `The ${name}` : `${name.charAt(0).toUpperCase()}${name.slice(1)}`;

/** Every loco and all other stock of a scene. */
export const vehicles = (
  scene: Pick<Scene, 'locos' | 'stock'>
): Readonly<Record<string, Standing>> => ({ ...scene.locos, ...scene.stock });

/** The scene with some of its locos and other stock elsewhere. */
export function restood(scene: Scene, at: Readonly<Record<string, Standing>>): Scene {
  const put = <S extends Standing>(all: Readonly<Record<string, S>>): Record<string, S> =>
    Object.fromEntries(
      Object.entries(all).map(([name, was]) => [name, at[name] ? { ...was, ...at[name] } : was])
    );
  return { ...scene, locos: put(scene.locos), stock: put(scene.stock) };
}

/** The scene with every vehicle held where it is. */
export function still(scene: Scene): Scene {
  const hold = <S extends Standing>(all: Readonly<Record<string, S>>): Record<string, S> =>
    Object.fromEntries(Object.entries(all).map(([name, at]) => [name, { ...at, speed: 0 }]));
  return { ...scene, locos: hold(scene.locos), stock: hold(scene.stock) };
}

/** Slower than this a vehicle is said to stand, m/s: no eye sees it. Source: common practice. */
const STANDS = 0.001;

/** The way in which a vehicle runs; undefined where it stands. */
export const runsTo = ({ speed }: Pick<Standing, 'speed'>): 'east' | 'west' | undefined => {
  if (Math.abs(speed) < STANDS) return undefined;
  return speed > 0 ? 'east' : 'west';
};

/** A train: a loco with what is coupled to it, or stock without a loco; its root comes first. */
export type Train = readonly [string, ...string[]];

/** The trains of a scene. Stock is coupled to a loco, or to other stock nearer to it. */
export function trainsOf(scene: Pick<Scene, 'locos' | 'stock'>): readonly Train[] {
  const stock = Object.entries(scene.stock);
  const followers = (name: string): readonly string[] =>
    stock
      .filter(([, { coupled }]) => coupled === name)
      .flatMap(([other]) => [other, ...followers(other)]);
  const roots = [
    ...Object.keys(scene.locos),
    ...stock.filter(([, { coupled }]) => coupled === undefined).map(([name]) => name)
  ];
  return roots.map((root): Train => [root, ...followers(root)]);
}

/** The loco that moves a train, if it has one. */
export const locoOf = ([root]: Train): string | undefined => (stockNamed(root) ? undefined : root);

/** The train to which a loco or other stock belongs. */
export const trainWith = (scene: Pick<Scene, 'locos' | 'stock'>, name: string): Train =>
  trainsOf(scene).find((train) => train.includes(name)) ?? [name];
