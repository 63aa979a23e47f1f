import { droppingOhms, leds, nextAbove, type Series } from '../tables';
import { read, switchedRoads, type Yard } from '../yard';
import type { Check, Finding } from './finding';
import { roadScene } from './road-scene';

/** An LED on a supply. */
export interface LampWish {
  readonly supplyVolts: number;
  readonly ledVolts: number;
  /** Amps the LED is meant to have. */
  readonly amps: number;
}

/** The resistor for a lamp, and what then flows. */
export interface LampFit {
  /** What the sum asks for, Ω. */
  readonly wantedOhms: number;
  /** The value next above that can be bought, Ω. */
  readonly ohms: number;
  readonly amps: number;
  /** Heat in the resistor, W. */
  readonly watts: number;
}

/**
 * The resistor for an LED: R = (U − Uf) / I, the preferred value next above, I = (U − Uf) / R and
 * P = I²·R then. Source: Lessons in Electric Circuits III, Diodes; IEC 60063.
 *
 * @throws RangeError when the supply is not above the LED's volts.
 */
export function fitLamp({ supplyVolts, ledVolts, amps }: LampWish, series: Series): LampFit {
  const wantedOhms = droppingOhms(supplyVolts, ledVolts, amps);
  const ohms = nextAbove(wantedOhms, series);
  const then = (supplyVolts - ledVolts) / ohms;
  return { wantedOhms, ohms, amps: then, watts: then ** 2 * ohms };
}

const milli = (value: number): string => (value * 1000).toFixed(1);

/** Power of the usual small resistor, W. Source: common practice. */
const SMALL_WATTS = 0.25;

function lampFinding(yard: Yard, road: string): Finding {
  const volts = yard.lamps === 'own' ? yard.lampSupply.volts : yard.supply.volts;
  const { ohms, watts } = fitLamp(
    { supplyVolts: volts, ledVolts: leds.red.volts, amps: leds.red.testAmps },
    'E12'
  );
  const scene = roadScene({ yard, roads: [road] });
  const amps = read(yard, scene).amps(`lamp ${road}`);
  const hot = watts > SMALL_WATTS;
  return {
    grade: hot ? 'think' : 'fine',
    what: `Each red lamp takes a ${ohms} Ω resistor on ${volts} V.`,
    where: switchedRoads(yard),
    amount: `${milli(amps)} mA at full volts, ${milli(watts)} mW in the resistor`,
    why:
      yard.lamps === 'own'
        ? 'The lamp tells of its switch, not of the rails: a plug that is out does not put it out.'
        : 'The lamp is bright only with the knob well turned east; a diode guards it from reversed volts.',
    cure: hot ? 'Use a half-watt resistor.' : 'A quarter-watt resistor is enough.',
    source: 'Lessons in Electric Circuits III, Diodes; IEC 60063',
    board: { yard, scene }
  };
}

/** The resistor of each panel lamp, its power, and what the lamp does not tell. */
export const lamps: Check = {
  id: 'lamps',
  title: 'What do the lamps need, and what do they tell?',
  run(yard) {
    const [road] = yard.lamps === 'none' ? [] : switchedRoads(yard);
    return road === undefined ? [] : [lampFinding(yard, road)];
  }
};
