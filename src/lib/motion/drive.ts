import { prepare, type Prepared, type Solution } from '../circuit';
import {
  circuitOf,
  locoNamed,
  motorConstant,
  type Loco,
  type Scene,
  type Standing,
  type Yard
} from '../yard';
import { backstop, type MotionEvent } from './backstop';

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
 * Quasi-static electrics; the motor's m·dv/dt = k·(i − I₀·sign v) is stepped implicitly
 * with the circuit, so that no stiff loco can make it swing: the armature is seen as
 * R + k²·dt/m behind k·v − k²·I₀·sign(v)·dt/m. First order in dt.
 */
export function driveTo(yard: Yard, drive: Drive, seconds: number): Drive {
  const last = Math.floor(seconds * TICKS_PER_SECOND + 1e-6);
  if (last <= drive.tick) return drive;
  const circuit = prepare(circuitOf(yard, drive.scene));
  const events = [...drive.events];
  let movers = Object.entries(drive.scene.locos).map(([name, at]) => mover(name, at));
  for (let tick = drive.tick + 1; tick <= last; tick++) {
    movers = step(yard, circuit, movers).map((next) => {
      const { standing, event } = backstop(yard, next.name, next.at, tick);
      if (event) events.push(event);
      return mover(next.name, standing);
    });
  }
  const locos = Object.fromEntries(movers.map(({ name, at }) => [name, at]));
  return { tick: last, scene: { ...drive.scene, locos }, events };
}

/** The scene once its locos run as fast as they will, each still where it stood. */
export function settle(yard: Yard, scene: Scene): Scene {
  const driven = driveTo(yard, start(scene), 0.5).scene;
  const locos = Object.entries(scene.locos).map(([name, at]) => {
    const speed = driven.locos[name]?.speed ?? 0;
    return [name, { ...at, speed }] as const;
  });
  return { ...scene, locos: Object.fromEntries(locos) };
}

const mover = (name: string, at: Standing): Mover => ({
  name,
  loco: locoNamed(name),
  at,
  way: Math.sign(at.speed)
});

function step(yard: Yard, circuit: Prepared, movers: readonly Mover[]): Mover[] {
  const ready = release(yard, circuit, movers);
  const solution = solveWith(circuit, ready);
  return ready.map((each) => moved(each, solution.amps(each.name)));
}

/** Locos at rest start when the current overcomes friction, unless a backstop holds them. */
function release(yard: Yard, circuit: Prepared, movers: readonly Mover[]): readonly Mover[] {
  if (movers.every((each) => each.way !== 0)) return movers;
  const solution = solveWith(circuit, movers);
  return movers.map((each) => {
    const amps = solution.amps(each.name);
    const way = Math.sign(amps);
    if (each.way !== 0 || Math.abs(amps) <= each.loco.lightAmps) return each;
    return backstop(yard, each.name, { ...each.at, speed: way }, 0).event ? each : { ...each, way };
  });
}

function solveWith(circuit: Prepared, movers: readonly Mover[]): Solution {
  for (const { name, loco, at, way } of movers) {
    const k = motorConstant(loco);
    const stiff = way === 0 ? 0 : (k * k * DT) / loco.mass;
    circuit.set(name, {
      ohms: loco.ohms + stiff,
      emf: way === 0 ? 0 : k * at.speed - stiff * loco.lightAmps * way
    });
  }
  return circuit.solve();
}

function moved(mover: Mover, amps: number): Mover {
  const { loco, at, way } = mover;
  if (way === 0) return mover;
  const gain = (DT * motorConstant(loco) * (amps - loco.lightAmps * way)) / loco.mass;
  const next = at.speed + gain;
  const speed = next * way > 0 ? next : 0;
  return { ...mover, at: { ...at, speed, atMm: at.atMm + 500 * (at.speed + speed) * DT } };
}
