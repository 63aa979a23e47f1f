import * as v from 'valibot';
import type { Element } from '../circuit';
import { voltmeterOhms } from '../tables';
import { findPoint, pointName } from './points';
import type { Instrument, Placed, Run } from './runs';

/** Open-circuit volts of the ohmmeter, and the resistance behind them, Ω: 1 mA at most. Source: common practice. */
const TEST_VOLTS = 0.5;
const TEST_OHMS = 500;
/** Resistance of the 12 V test lamp, Ω: 0.5 A, 6 W. A cold filament's lower resistance is left out. Source: common practice. */
const LAMP_OHMS = 24;

const pairAllowed = 'two different points, such as [feed, feed rail A]';

/** The two points at which probes are held. */
export const PairSchema = v.pipe(
  v.tuple([v.string(pairAllowed), v.string(pairAllowed)], pairAllowed),
  v.check(([a, b]) => a !== b, pairAllowed)
);
type Pair = v.InferOutput<typeof PairSchema>;

/** Each instrument's id in readings, and its resistance, Ω. */
const instruments: Readonly<Record<Instrument, { readonly id: string; readonly ohms: number }>> = {
  voltmeter: { id: 'meter volts', ohms: voltmeterOhms },
  ohmmeter: { id: 'meter ohms', ohms: TEST_OHMS },
  'test lamp': { id: 'test lamp', ohms: LAMP_OHMS }
};

/** The runs with an instrument's two probes held at two points; throws PlaceError when a point is not there. */
export function hold(runs: readonly Run[], kind: Instrument, pair: Pair): readonly Run[] {
  const [from, to] = pair.map((id) => findPoint(runs, id).node) as [string, string];
  const { id, ohms } = instruments[kind];
  const parts = [{ id, kind, ohms, closed: true }];
  return [...runs, { id, from, to, job: 'feed', parts, held: pair }];
}

/** The two points in words: "the controller's feed and feed rail B". */
export const pairWords = (pair: Pair): string => pair.map(pointName).join(' and ');

/** Whether an element or part is a test instrument at the end of two probes: no part of the wiring. */
export const isProbe = (id: string): boolean =>
  Object.values(instruments).some((each) => each.id === id);

/** Whether a run is a voltmeter or ohmmeter: what it touches stays at the level it has without it. */
export const isMeterRun = ({ id }: Run): boolean => isProbe(id) && id !== 'test lamp';

/** The element of an instrument: the ohmmeter drives a small current, the others are plain resistors. */
export function probeElement({ kind, id, from, to, ohms }: Placed): Element {
  return kind === 'ohmmeter'
    ? { kind: 'source', id, a: from, b: to, volts: TEST_VOLTS, ohms }
    : { kind: 'resistor', id, a: from, b: to, ohms };
}

/** An instrument as an element between two nodes. */
export const instrumentBetween = (kind: Instrument, from: string, to: string): Element =>
  probeElement({ ...instruments[kind], kind, from, to, closed: true });

/**
 * An instrument behind a switch of its own, `<id> held`: one circuit then serves many readings. The
 * switch has part of the instrument's ohms, so that what is held are still its two points.
 */
export function switchedProbe(
  kind: Instrument,
  id: string,
  [from, to]: Readonly<Pair>
): readonly Element[] {
  const half = instruments[kind].ohms / 2;
  const tip = `${id} tip`;
  return [
    { kind: 'switch', id: `${id} held`, a: from, b: tip, closed: false, ohms: half },
    probeElement({ id, kind, from: tip, to, ohms: half, closed: true })
  ];
}

/** More than this an ohmmeter shows as open, Ω. Source: common practice. */
const OPEN_OHMS = 20e6;
/** Below this the ohmmeter's buzzer sounds, Ω. Source: common practice. */
export const BUZZ_OHMS = 50;

/** Ohms between the probes of an ohmmeter which has `volts` across it and gives `amps`; Infinity is open. */
export function ohmsOf(volts: number, amps: number): number {
  const ohms = Math.abs(volts) / Math.abs(amps);
  return ohms < OPEN_OHMS ? ohms : Infinity;
}

/** How a lamp looks. */
export type Lit = 'dark' | 'dim' | 'bright';

/** From these shares of its full power on a lamp is seen to glow, and to be bright. Source: common practice. */
const DIM_SHARE = 0.02;
const BRIGHT_SHARE = 0.5;
const LAMP_VOLTS = 12;

/** How the 12 V test lamp looks with `volts` across it, by its share of full power, (U/12 V)². */
export function litBy(volts: number): Lit {
  const share = (volts / LAMP_VOLTS) ** 2;
  if (share < DIM_SHARE) return 'dark';
  return share < BRIGHT_SHARE ? 'dim' : 'bright';
}
