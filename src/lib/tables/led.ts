import { thermalVoltage } from './physics';

/** Colour of an indicator LED. */
export type LedColour = 'infrared' | 'red' | 'orange' | 'yellow' | 'green' | 'blue' | 'white';

/** An LED's forward voltage and how far it may lie from it. */
export interface LedEntry {
  /** Forward voltage to reckon with at `testAmps`, V. Source: common practice. */
  readonly volts: number;
  /** Current of that voltage, A. Source: common practice. */
  readonly testAmps: number;
  /** Range of forward voltage that is sold, V. */
  readonly range: readonly [least: number, most: number];
  readonly source: string;
}

const table = 'Lessons in Electric Circuits III, LED table';

/** Indicator LEDs by colour. */
export const leds: Readonly<Record<LedColour, LedEntry>> = {
  infrared: { volts: 1.4, testAmps: 0.01, range: [1.2, 1.7], source: `${table}, 940 nm` },
  red: { volts: 2, testAmps: 0.01, range: [1.5, 2.4], source: `${table}, 660 nm` },
  orange: { volts: 2.1, testAmps: 0.01, range: [1.7, 2.8], source: 'as yellow, common practice' },
  yellow: { volts: 2.1, testAmps: 0.01, range: [1.7, 2.8], source: `${table}, 560–595 nm` },
  green: { volts: 2.2, testAmps: 0.01, range: [1.7, 2.8], source: `${table}, 560–595 nm` },
  blue: { volts: 3.2, testAmps: 0.01, range: [3, 4], source: table },
  white: { volts: 3.2, testAmps: 0.01, range: [3, 4], source: table }
};

/** Reverse voltage that an indicator LED stands, V. Source: Lessons in Electric Circuits III. */
export const ledReverseVolts = 5;

/** Ideality of an indicator LED's junction. Source: common practice. */
export const ledIdeality = 2;

/** A small silicon diode laid across an LED to keep its reverse volts low: about 0.7 V forward. Source: Lessons in Electric Circuits III, Diodes; test current by common practice. */
export const guardDiode = { volts: 0.7, testAmps: 0.01 } as const;

/**
 * Saturation current of a junction that carries `amps` at `volts`, A.
 *
 * Is = I / (exp(V / (n·Vt)) − 1); `thermal` V, 25.852 mV unless given.
 *
 * Source: the diode equation, e.g. Lessons in Electric Circuits III, Diodes.
 *
 * @example
 * saturationFrom(2, 0.01) // 1.5876e-19
 */
export function saturationFrom(
  volts: number,
  amps: number,
  ideality: number = ledIdeality,
  thermal: number = thermalVoltage
): number {
  return amps / Math.expm1(volts / (ideality * thermal));
}

/**
 * Resistance that lets a given current through an LED, Ω: (V − Vf) / I.
 *
 * A `RangeError` when the supply is not above the LED's voltage.
 *
 * Source: Lessons in Electric Circuits III, Diodes.
 *
 * @example
 * droppingOhms(12, 2, 0.01) // 1000
 */
export function droppingOhms(supplyVolts: number, ledVolts: number, amps: number): number {
  if (!(supplyVolts > ledVolts) || !(amps > 0)) {
    const met = `${String(ledVolts)} V on ${String(supplyVolts)} V at ${String(amps)} A`;
    throw new RangeError(`LED: ${met}. The supply must be above the LED's volts, amps above 0.`);
  }
  return (supplyVolts - ledVolts) / amps;
}
