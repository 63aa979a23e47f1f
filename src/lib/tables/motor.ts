/** What a catalogue or two measurements say of a motor at one voltage. */
export interface MotorFigures {
  /** Voltage of the figures, V. */
  readonly volts: number;
  /** Current with the shaft held, A. */
  readonly stallAmps: number;
  /** Current and speed running free, A and revolutions a minute. */
  readonly freeAmps: number;
  readonly freeRpm: number;
}

/** A permanent-magnet motor: V = I·Ra + Ke·ω and T = Ke·I less what friction takes. */
export interface MotorModel {
  /** Armature resistance, Ω. */
  readonly ohms: number;
  /** Ke = Kt: volts per rad/s, and newton-metres per ampere. */
  readonly constant: number;
  /** Friction, N·m: Ke times the free current. */
  readonly friction: number;
  /** Voltage at which it starts in this model, V; real ones start a little higher. */
  readonly startVolts: number;
}

/** A motor at work. */
export interface MotorState {
  readonly amps: number;
  /** Speed, rad/s; 0 when it does not turn. */
  readonly speed: number;
  /** Back-EMF, V. */
  readonly emf: number;
  /** Power to the load, W, and its share of what is taken in. */
  readonly output: number;
  readonly efficiency: number;
}

/** A speed in rad/s, from revolutions a minute. */
export const radPerSecond = (rpm: number): number => (rpm * 2 * Math.PI) / 60;

/** A speed in revolutions a minute, from rad/s. */
export const revolutionsPerMinute = (speed: number): number => (speed * 60) / (2 * Math.PI);

/**
 * A motor from its stall and its free run: Ra = V / Istall, Ke = (V − I0·Ra) / ω0.
 *
 * A `RangeError` unless stall current > free current ≥ 0 and volts and speed are above 0.
 *
 * Source: equations of the permanent-magnet DC motor, e.g. OpenStax University Physics vol. 2,
 * m58481; Ra from a stall test is better than from an ohmmeter on the brushes (common practice).
 *
 * @example
 * motorFrom({ volts: 12, stallAmps: 0.75, freeAmps: 0.06, freeRpm: 12000 }).constant // 0.0087854
 */
export function motorFrom({ volts, stallAmps, freeAmps, freeRpm }: MotorFigures): MotorModel {
  if (!(volts > 0 && freeRpm > 0 && freeAmps >= 0 && stallAmps > freeAmps)) {
    const met = [volts, stallAmps, freeAmps, freeRpm].map(String).join(', ');
    throw new RangeError(
      `Motor figures: ${met}. Volts and speed must be above 0, the stall current above the free one.`
    );
  }
  const ohms = volts / stallAmps;
  const constant = (volts - freeAmps * ohms) / radPerSecond(freeRpm);
  return { ohms, constant, friction: constant * freeAmps, startVolts: freeAmps * ohms };
}

/**
 * The steady state of a motor on a voltage, with a load on its shaft.
 *
 * I = (T + friction) / Ke, ω = (V − I·Ra) / Ke; held where V cannot turn it. `volts` ≥ 0, `torque`
 * of the load in N·m.
 *
 * Source: as `motorFrom`.
 *
 * @example
 * atLoad(motor, 12, 0.002).amps // 0.287652
 */
export function atLoad(motor: MotorModel, volts: number, torque = 0): MotorState {
  const needed = (torque + motor.friction) / motor.constant;
  const emf = volts - needed * motor.ohms;
  if (emf <= 0) return { amps: volts / motor.ohms, speed: 0, emf: 0, output: 0, efficiency: 0 };
  const speed = emf / motor.constant;
  const output = torque * speed;
  return { amps: needed, speed, emf, output, efficiency: output / (volts * needed) };
}

/** Torque that a held shaft gives, N·m: Ke·V / Ra less friction. Source: as `motorFrom`. */
export const stallTorque = ({ constant, ohms, friction }: MotorModel, volts: number): number =>
  (constant * volts) / ohms - friction;

/**
 * Greatest efficiency: (1 − √(I0 / Istall))².
 *
 * Source: as `motorFrom`; maximum of output over input.
 */
export const bestEfficiency = ({ startVolts }: MotorModel, volts: number): number =>
  (1 - Math.sqrt(startVolts / volts)) ** 2;
