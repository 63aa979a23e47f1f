import { prepare, type Prepared, type Solution } from '../circuit';
import {
  circuitOf,
  lineOf,
  locoIn,
  locoOf,
  motorConstant,
  placeOn,
  restood,
  touches,
  trainsOf,
  trainWith,
  vehicleIn,
  vehicles,
  type Line,
  type Loco,
  type Scene,
  type Standing,
  type Yard
} from '../yard';
import { ahead, type End, type Move } from './ahead';
import { arrive, type Stride } from './arrive';
import type { MotionEvent } from './event';

/** Fixed steps in a second of the yard's time. */
export const TICKS_PER_SECOND = 120;
const DT = 1 / TICKS_PER_SECOND;

/** A scene on its way: the same scene and the same ticks give the same result, bit for bit. */
export interface Drive {
  readonly tick: number;
  readonly scene: Scene;
  readonly events: readonly MotionEvent[];
  /** What leans on what: it is told when it begins, and again only once they have parted. */
  readonly contacts?: readonly string[];
}

/** Trains that lean on something have parted from it once they are so far from it, mm. */
const PARTED_MM = 1;
/** Nearer than this something is in the way, mm. */
const TOUCH_MM = 1e-6;

/** The trains with a loco, and the lines they run on: both stay the same while the deck stands. */
class Ways {
  readonly #yard: Yard;
  readonly #deck: number;
  readonly #lines = new Map<string, Line>();
  readonly #trains: ReadonlyMap<string, readonly string[]>;

  constructor(yard: Yard, scene: Scene) {
    this.#yard = yard;
    this.#deck = scene.deck;
    const all = vehicles(scene);
    this.#trains = new Map(
      trainsOf(scene).flatMap((train) => {
        const loco = locoOf(train);
        const from = loco && all[loco];
        if (!from) return [];
        const place = (name: string) => placeOn(this.line(from.road), all[name] as Standing) ?? 0;
        return [[loco, [...train].sort((a, b) => place(a) - place(b))] as const];
      })
    );
  }

  readonly line = (road: string): Line => {
    const known = this.#lines.get(road) ?? lineOf(this.#yard, this.#deck, road);
    this.#lines.set(road, known);
    return known;
  };

  /** The train of a loco, west to east. */
  train(loco: string): readonly string[] {
    return this.#trains.get(loco) ?? [loco];
  }

  /** On which rails each vehicle's wheels stand. */
  railsOf(scene: Scene): string {
    return Object.entries(vehicles(scene))
      .map(([name, at]) => touches(this.line(at.road), name, at).join('+'))
      .join(' ');
  }

  move(scene: Scene, loco: string): Move {
    return { scene, train: this.train(loco), line: this.line };
  }
}

interface Mover {
  readonly name: string;
  readonly loco: Loco;
  /** Mass of the whole train, kg. */
  readonly mass: number;
  readonly at: Standing;
  /** Way in which friction is overcome, ±1 east/west; 0 while held still. */
  readonly way: number;
}

/** A drive that starts now. */
export const start = (scene: Scene): Drive => ({ tick: 0, scene, events: [] });

/** What a scene on its way was worked out with. */
interface Under {
  readonly scene: Scene;
  readonly ways: Ways;
  readonly bench: Bench;
}

/**
 * Drives on to `seconds` after the start, in fixed steps, whatever the frame rate.
 * Once a loco falls into the gap, the yard stands still: the drive is over.
 * Quasi-static electrics; the motor's m·dv/dt = k·(i − I₀·sign v) is stepped implicitly
 * with the circuit, so that no stiff loco can make it swing: the armature is seen as
 * R + k²·dt/m behind k·v − k²·I₀·sign(v)·dt/m. First order in dt.
 */
export const driveTo = (yard: Yard, drive: Drive, seconds: number): Drive =>
  driver(yard)(drive, seconds);

/** A `driveTo` for one yard, which goes on with the circuit of its last drive where that is driven on. */
export function driver(yard: Yard): (drive: Drive, seconds: number) => Drive {
  let last: Under | undefined;
  return (drive, seconds) => {
    const end = Math.floor(seconds * TICKS_PER_SECOND + 1e-6);
    if (!(end > drive.tick)) return drive;
    const ways = last?.scene === drive.scene ? last.ways : new Ways(yard, drive.scene);
    const bench = last?.scene === drive.scene ? last.bench : new Bench(yard, drive.scene, ways);
    const driven = driveOn(yard, drive, { ways, bench, end });
    last = { ways, bench: driven.bench, scene: driven.drive.scene };
    return driven.drive;
  };
}

interface Course extends Omit<Under, 'scene'> {
  /** The tick to drive to. */
  readonly end: number;
}

function driveOn(yard: Yard, drive: Drive, { ways, bench, end }: Course) {
  const events = [...drive.events];
  let { scene } = drive;
  let contacts = drive.contacts ?? [];
  for (let tick = drive.tick + 1; tick <= end && !isOver(scene); tick++) {
    bench = bench.fits(scene) ? bench : new Bench(yard, scene, ways);
    for (const { name, ...stride } of bench.step(scene)) {
      if (stride.byMm === 0 && stride.speed === scene.locos[name]?.speed) continue;
      const { standings, events: happened, contact } = arrive(ways.move(scene, name), stride);
      const again = contact !== undefined && contacts.includes(contact);
      if (contact !== undefined && !again) contacts = [...contacts, contact];
      events.push(...(again ? happened.slice(0, -1) : happened).map((each) => ({ ...each, tick })));
      scene = restood(scene, standings);
    }
    contacts = contacts.filter((each) => leans(ways, scene, each));
  }
  const rest = contacts.length > 0 ? { contacts } : {};
  return { bench, drive: { tick: end, scene, events, ...rest } };
}

/** Whether the train of a contact is still near what it met. */
function leans(ways: Ways, scene: Scene, contact: string): boolean {
  const [, lead = '', end = ''] = /^(.+) (west|east) /.exec(contact) ?? [];
  const train = trainWith(scene, lead);
  return ahead(ways.move(scene, train[0]), end as End).roomMm < PARTED_MM;
}

/** Whether a vehicle has fallen: then the scene ends. */
export const isOver = (scene: Scene): boolean =>
  Object.values(vehicles(scene)).some(({ fallen }) => fallen);

/** The scene once its locos run as fast as they will, each still where it stood. */
export function settle(yard: Yard, scene: Scene): Scene {
  const driven = driveTo(yard, start(scene), 0.5).scene;
  const after = vehicles(driven);
  const speeds = Object.entries(vehicles(scene)).map(([name, at]) => {
    return [name, { ...at, speed: after[name]?.speed ?? 0 }] as const;
  });
  return restood(scene, Object.fromEntries(speeds));
}

/** A scene's circuit, good for as long as every loco stands on the same rails. */
class Bench {
  readonly #yard: Yard;
  readonly #rails: string;
  readonly #circuit: Prepared;
  readonly #ways: Ways;

  constructor(yard: Yard, scene: Scene, ways: Ways) {
    this.#yard = yard;
    this.#ways = ways;
    this.#rails = ways.railsOf(scene);
    this.#circuit = prepare(circuitOf(yard, scene));
  }

  fits(scene: Scene): boolean {
    return this.#ways.railsOf(scene) === this.#rails;
  }

  /** How far each loco wants to take its train in one step. */
  step(scene: Scene): readonly (Stride & { readonly name: string })[] {
    const movers = Object.entries(scene.locos).map(([name, at]) => this.#moverOf(name, at));
    const ready = this.#release(scene, movers);
    const solution = this.#solve(ready);
    return ready.map((each) => ({ name: each.name, ...strideOf(each, solution.amps(each.name)) }));
  }

  /** Locos at rest start when the current overcomes friction, unless something holds them. */
  #release(scene: Scene, movers: readonly Mover[]): readonly Mover[] {
    if (movers.every((each) => each.way !== 0)) return movers;
    const solution = this.#solve(movers);
    return movers.map((each) => {
      const amps = solution.amps(each.name);
      if (each.way !== 0 || Math.abs(amps) <= each.loco.lightAmps) return each;
      const way = Math.sign(amps);
      const first = ahead(this.#ways.move(scene, each.name), way > 0 ? 'east' : 'west');
      return first.kind !== 'gap' && first.roomMm <= TOUCH_MM ? each : { ...each, way };
    });
  }

  #solve(movers: readonly Mover[]): Solution {
    for (const { name, loco, mass, at, way } of movers) {
      const k = motorConstant(loco);
      const stiff = way === 0 ? 0 : (k * k * DT) / mass;
      this.#circuit.set(name, {
        ohms: loco.ohms + stiff,
        emf: way === 0 ? 0 : k * at.speed - stiff * loco.lightAmps * way
      });
    }
    return this.#circuit.solve();
  }

  #moverOf(name: string, at: Standing): Mover {
    const masses = this.#ways.train(name).map((each) => vehicleIn(this.#yard, each).mass);
    const mass = masses.reduce((sum, each) => sum + each, 0);
    return { name, loco: locoIn(this.#yard, name), mass, at, way: Math.sign(at.speed) };
  }
}

/** What stock rolls with is little beside what its loco's motor rubs with: it is left out. */
function strideOf({ loco, mass, at, way }: Mover, amps: number): Stride {
  if (way === 0) return { byMm: 0, speed: at.speed };
  const gain = (DT * motorConstant(loco) * (amps - loco.lightAmps * way)) / mass;
  const next = at.speed + gain;
  const speed = next * way > 0 ? next : 0;
  return { speed, byMm: 500 * (at.speed + speed) * DT };
}
