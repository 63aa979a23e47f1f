import { prepare, type Prepared, type Solution } from '../circuit';
import {
  circuitOf,
  locoNamed,
  motorConstant,
  touches,
  type Loco,
  type Scene,
  type Standing,
  type Yard
} from '../yard';
import { arrive } from './arrive';
import type { MotionEvent } from './event';

/** Fixed steps in a second of the yard's time. */
export const TICKS_PER_SECOND = 120;
const DT = 1 / TICKS_PER_SECOND;

/** A scene on its way: the same scene and the same ticks give the same result, bit for bit. */
export interface Drive {
  readonly tick: number;
  readonly scene: Scene;
  readonly events: readonly MotionEvent[];
}

interface Mover {
  readonly name: string;
  readonly loco: Loco;
  readonly at: Standing;
  /** Way in which friction is overcome, ±1 east/west; 0 while held still. */
  readonly way: number;
}

/** A drive that starts now. */
export const start = (scene: Scene): Drive => ({ tick: 0, scene, events: [] });

/**
 * Drives on to `seconds` after the start, in fixed steps, whatever the frame rate.
 * Once a loco falls into the gap, the yard stands still: the drive is over.
 * Quasi-static electrics; the motor's m·dv/dt = k·(i − I₀·sign v) is stepped implicitly
 * with the circuit, so that no stiff loco can make it swing: the armature is seen as
 * R + k²·dt/m behind k·v − k²·I₀·sign(v)·dt/m. First order in dt.
 */
export function driveTo(yard: Yard, drive: Drive, seconds: number): Drive {
  const last = Math.floor(seconds * TICKS_PER_SECOND + 1e-6);
  if (!(last > drive.tick)) return drive;
  const events = [...drive.events];
  let { scene } = drive;
  let bench = new Bench(yard, scene);
  for (let tick = drive.tick + 1; tick <= last && !isOver(scene); tick++) {
    bench = bench.fits(scene) ? bench : new Bench(yard, scene);
    const locos = { ...scene.locos };
    for (const { name, at } of bench.step(scene)) {
      const { standing, event } = arrive({ yard, scene: { ...scene, locos }, name }, at);
      locos[name] = standing;
      if (event) events.push({ ...event, tick });
    }
    scene = { ...scene, locos };
  }
  return { tick: last, scene, events };
}

/** Whether a loco has fallen: then the scene ends. */
export const isOver = (scene: Scene): boolean =>
  Object.values(scene.locos).some(({ fallen }) => fallen);

/** The scene once its locos run as fast as they will, each still where it stood. */
export function settle(yard: Yard, scene: Scene): Scene {
  const driven = driveTo(yard, start(scene), 0.5).scene;
  const locos = Object.entries(scene.locos).map(([name, at]) => {
    const speed = driven.locos[name]?.speed ?? 0;
    return [name, { ...at, speed }] as const;
  });
  return { ...scene, locos: Object.fromEntries(locos) };
}

/** A scene's circuit, good for as long as every loco stands on the same rails. */
class Bench {
  readonly #yard: Yard;
  readonly #rails: string;
  readonly #circuit: Prepared;

  constructor(yard: Yard, scene: Scene) {
    this.#yard = yard;
    this.#rails = railsOf(yard, scene);
    this.#circuit = prepare(circuitOf(yard, scene));
  }

  fits(scene: Scene): boolean {
    return railsOf(this.#yard, scene) === this.#rails;
  }

  /** Where each loco wants to be one step on. */
  step(scene: Scene): readonly Mover[] {
    const movers = Object.entries(scene.locos).map(([name, at]) => moverOf(name, at));
    const ready = this.#release(scene, movers);
    const solution = this.#solve(ready);
    return ready.map((each) => moved(each, solution.amps(each.name)));
  }

  /** Locos at rest start when the current overcomes friction, unless something holds them. */
  #release(scene: Scene, movers: readonly Mover[]): readonly Mover[] {
    if (movers.every((each) => each.way !== 0)) return movers;
    const solution = this.#solve(movers);
    return movers.map((each) => {
      const amps = solution.amps(each.name);
      if (each.way !== 0 || Math.abs(amps) <= each.loco.lightAmps) return each;
      const way = Math.sign(amps);
      const push = { ...each.at, speed: way };
      const { standing } = arrive({ yard: this.#yard, scene, name: each.name }, push);
      return standing.speed === 0 && !standing.fallen ? each : { ...each, way };
    });
  }

  #solve(movers: readonly Mover[]): Solution {
    for (const { name, loco, at, way } of movers) {
      const k = motorConstant(loco);
      const stiff = way === 0 ? 0 : (k * k * DT) / loco.mass;
      this.#circuit.set(name, {
        ohms: loco.ohms + stiff,
        emf: way === 0 ? 0 : k * at.speed - stiff * loco.lightAmps * way
      });
    }
    return this.#circuit.solve();
  }
}

const railsOf = (yard: Yard, scene: Scene): string =>
  Object.entries(scene.locos)
    .map(([name, at]) => touches(yard, scene.deck, name, at).join('+'))
    .join(' ');

const moverOf = (name: string, at: Standing): Mover => ({
  name,
  loco: locoNamed(name),
  at,
  way: Math.sign(at.speed)
});

function moved(mover: Mover, amps: number): Mover {
  const { loco, at, way } = mover;
  if (way === 0) return mover;
  const gain = (DT * motorConstant(loco) * (amps - loco.lightAmps * way)) / loco.mass;
  const next = at.speed + gain;
  const speed = next * way > 0 ? next : 0;
  return { ...mover, at: { ...at, speed, atMm: at.atMm + 500 * (at.speed + speed) * DT } };
}
