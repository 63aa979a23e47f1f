import { gapWords } from '../motion';
import { joinWords, locoOf, trainWith, vehicles, type Why } from '../yard';
import type { Played } from './kinds/kind';
import { way, type Way } from './way';

const did: Record<Way, string> = { stays: 'stayed', west: 'went west', east: 'went east' };

/** Faster than this a loco runs, m/s. */
const RUNS = 0.001;

function didWords(played: Played, name: string): string {
  const went = way(played, name);
  const { before, after } = played;
  if (vehicles(after)[name]?.fallen) {
    return went === 'stays' ? 'fell into the gap' : `${did[went]} and fell into the gap`;
  }
  const ran = Math.abs(vehicles(before)[name]?.speed ?? 0) > RUNS;
  return went === 'stays' && ran ? 'stopped' : did[went];
}

/** What the locos did: "Plover went east, Heron stayed." */
export function happened(played: Played, locos: readonly string[]): string {
  const parts = locos.map((name) => `${name} ${didWords(played, name)}`);
  return `${joinWords(parts, 'and')}.`;
}

/** Why a loco did what it did, at one place: "Row D is open at toggle D: its loco has one ink on both rails." */
export function because(played: Played, loco: string): string {
  const { yard, after, reading } = played;
  if (vehicles(after)[loco]?.fallen) return gapWords(yard, after);
  const mover = locoOf(trainWith(after, loco)) ?? loco;
  if (mover !== loco) return because(played, mover);
  const road = vehicles(after)[loco]?.road as string;
  const why = reading.why(road);
  if (why.state === 'one ink')
    return `Both rails of row ${road} reach the same terminal: one ink, so no volts.`;
  if (why.state === 'open') return open(road, why);
  if (way(played, loco) === 'stays') {
    return `Row ${road} is whole, but ${loco} gets too few volts to start.`;
  }
  return `Row ${road} is whole, out and home: two inks face each other across ${loco}.`;
}

const open = (road: string, why: Why): string =>
  why.breaks.length === 0
    ? `Row ${road} has no way from its rails to both terminals.`
    : `Row ${road} is open at ${joinWords(why.breaks, 'and')}: one ink on both rails of its loco.`;

/** Why a lamp looks as it does: what flows in it, and from where. */
export function lampBecause({ yard, reading }: Played, road: string): string {
  const amps = reading.amps(`lamp ${road}`);
  const from = yard.lamps === 'own' ? "the lamps' own supply" : `the feed of road ${road}`;
  return amps < 5e-5
    ? `No current flows in lamp ${road}.`
    : `${(amps * 1000).toFixed(1)} mA flow in lamp ${road}, from ${from}.`;
}
