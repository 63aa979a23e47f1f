import { droppingOhms, leds, nextAbove, type Series } from '../tables';
import { read, switchedRoads, type LampState, type Yard } from '../yard';
import type { Check, Finding } from './finding';
import { milliText } from './milli';
import { roadScene, sourceVolts } from './road-scene';

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

/** Power of the usual small resistor, W. Source: common practice. */
const SMALL_WATTS = 0.25;

/** Volts on which a road's lamp is: its own supply's, or its controller's at full knob. */
const voltsOf = (yard: Yard, road: string): number =>
  yard.lamps === 'own' ? yard.lampSupply.volts : sourceVolts(yard, road);

/** How the lamp of a road looks with the knob at this share, east positive. */
const looksAt = (yard: Yard, road: string, knob: number): LampState | undefined => {
  const scene = roadScene({ yard, roads: [road] });
  return read(yard, { ...scene, controller: knob, second: yard.second ? knob : 0 }).lamp(road);
};

/** How bright it is, and when. */
function brightWords(yard: Yard, road: string): string {
  const full = looksAt(yard, road, 1);
  return yard.lamps === 'own'
    ? `${full} whenever its switch is on`
    : `${full} at full knob, ${looksAt(yard, road, 0.5)} at half, ${looksAt(yard, road, -1)} with the knob west`;
}

const tells = {
  own: 'It tells of its switch, not of the rails: a plug that is out, or a wire that is off, does not put it out. It hangs on its own supply, which never reverses, so it needs no diode across it.',
  track:
    'It hangs behind the switch: it tells that volts are there, not that they reach the rails. The track is reversed, and an LED stands only 5 V the wrong way: the diode across it takes that.'
};

/** The lamps that take one resistor, on the same volts. */
function lampFinding(yard: Yard, kind: keyof typeof tells, names: readonly string[]): Finding {
  const [road] = names as readonly [string, ...string[]];
  const supplyVolts = voltsOf(yard, road);
  const wish = { supplyVolts, ledVolts: leds.red.volts, amps: leds.red.testAmps };
  const { wantedOhms, ohms, watts } = fitLamp(wish, 'E12');
  const scene = roadScene({ yard, roads: [road] });
  const amps = read(yard, scene).amps(`lamp ${road}`);
  const hot = watts > SMALL_WATTS;
  return {
    grade: hot ? 'think' : 'fine',
    what: `${names.length === 1 ? 'The red lamp takes' : 'Each red lamp takes'} a resistor of ${ohms} Ω on ${supplyVolts} V: it is ${brightWords(yard, road)}.`,
    where: names,
    amount: `${milliText(amps, 'A')} through the lamp, ${milliText(watts, 'W')} of heat in the resistor; the sum asks for ${Math.ceil(wantedOhms)} Ω, ${Math.ceil(wantedOhms) === ohms ? 'a value' : `and ${ohms} Ω is the next`} of the E12 series`,
    why: tells[kind],
    cure: hot
      ? 'Use a half-watt resistor: a quarter-watt one gets too hot.'
      : 'A quarter-watt resistor is enough.',
    source: 'Lessons in Electric Circuits III, Diodes; IEC 60063; brightness by common practice',
    board: { yard, scene }
  };
}

/** The resistor of each panel lamp, its power, how bright it is, and what it does not tell. */
export const lamps: Check = {
  id: 'lamps',
  title: 'What do the lamps need, and what do they tell?',
  run(yard) {
    const kind = yard.lamps;
    if (kind === 'none') return [];
    const names = switchedRoads(yard);
    const volts = [...new Set(names.map((road) => voltsOf(yard, road)))];
    return volts.map((each) =>
      lampFinding(
        yard,
        kind,
        names.filter((road) => voltsOf(yard, road) === each)
      )
    );
  }
};
