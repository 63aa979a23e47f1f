import { gapWords } from '../motion';
import {
  ampsText,
  findPoint,
  joinWords,
  levelWords,
  locoOf,
  pointName,
  read,
  runsTo,
  sentence,
  trainWith,
  vehicles,
  voltsText,
  type Reading,
  type Why
} from '../yard';
import type { Played } from './kinds/kind';
import { way, type Way } from './way';

const did: Record<Way, string> = { stays: 'stayed', west: 'went west', east: 'went east' };

function didWords(played: Played, name: string): string {
  const went = way(played, name);
  const { before, after } = played;
  if (vehicles(after)[name]?.fallen) {
    return went === 'stays' ? 'fell into the gap' : `${did[went]} and fell into the gap`;
  }
  const was = vehicles(before)[name];
  return went === 'stays' && was && runsTo(was) ? 'stopped' : did[went];
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
  const from = vehicles(played.settled)[loco]?.road as string;
  if (from !== road && read(yard, played.settled).why(from).state === 'loop')
    return crossed(reading, { loco, from, to: road });
  const why = reading.why(road);
  if (why.state === 'one ink')
    return `Both rails of row ${road} reach the same terminal: one ink, so no volts.`;
  if (why.state === 'open') return open(reading, road, why);
  if (way(played, loco) === 'stays') {
    return `Row ${road} is whole, but ${loco} gets too few volts to start.`;
  }
  return `Row ${road} is whole, out and home: two inks face each other across ${loco}.`;
}

const breakWords = ({ breaks }: Why): string => joinWords(breaks, 'and');

function open(reading: Reading, road: string, why: Why): string {
  if (why.breaks.length === 0) return `Row ${road} has no way from its rails to both terminals.`;
  const floats = (['feed', 'return'] as const).every(
    (rail) => reading.level(`${rail} rail ${road}`).joined === 'nothing'
  );
  const rails = floats
    ? 'both its rails are joined to nothing'
    : 'one ink on both rails of its loco';
  return `Row ${road} is open at ${breakWords(why)}: ${rails}.`;
}

/** A loco that ran from a live road onto another. */
function crossed(
  reading: Reading,
  { loco, from, to }: { readonly loco: string; readonly from: string; readonly to: string }
): string {
  const why = reading.why(to);
  const there = why.state === 'open' && why.breaks.length > 0 ? `, open at ${breakWords(why)}` : '';
  return `Row ${from} is whole, out and home, so ${loco} ran from it onto road ${to}${there}.`;
}

/** Of the supply's volts, the share under which it is told that the way takes the rest. Source: common practice. */
const MOST = 0.9;

/** What a voltmeter still finds of the supply's volts where current flows between its probes; empty where that is most or none. */
function leftBetween(reading: Reading, meter: string): string {
  const [volts, all] = [reading.volts(meter), reading.between('feed', 'return')].map((each) =>
    Math.abs(each ?? 0)
  ) as [number, number];
  const ends = reading.runs.find(({ id }) => id === meter)?.held ?? [];
  const joined = ends.map((id) =>
    id === 'feed' || id === 'return' ? id : reading.level(findPoint(reading.runs, id).node).joined
  );
  const isPart = volts > 0.05 && volts < MOST * all;
  return isPart && joined.includes('feed') && joined.includes('return')
    ? `Of ${voltsText(all)} only ${voltsText(volts)} are left there: the way takes the rest while amps flow.`
    : '';
}

/** What a voltmeter or a test lamp at the end of two probes stands between; empty without one. */
export function probeBecause({ reading }: Played): string {
  const run = reading.runs.find(({ held }) => held);
  if (!run?.held) return '';
  if (run.id === 'test lamp') {
    const volts = Math.abs(reading.volts(run.id) ?? 0);
    return `${voltsText(volts)} stand across the lamp, so ${ampsText(Math.abs(reading.amps(run.id)))} flow in it.`;
  }
  if (reading.ohms !== undefined) return '';
  const left = leftBetween(reading, run.id);
  if (left) return left;
  const ends = run.held.flatMap((id) =>
    id === 'feed' || id === 'return'
      ? []
      : [`${pointName(id)} is ${levelWords(reading.level(findPoint(reading.runs, id).node))}`]
  );
  return ends.length === 0 ? '' : sentence(joinWords(ends, 'and'));
}

/** Why a lamp looks as it does: what flows in it, and from where. */
export function lampBecause({ yard, reading }: Played, road: string): string {
  const amps = reading.amps(`lamp ${road}`);
  const from = yard.lamps === 'own' ? "the lamps' own supply" : `the feed of road ${road}`;
  return amps < 5e-5
    ? `No current flows in lamp ${road}.`
    : `${(amps * 1000).toFixed(1)} mA flow in lamp ${road}, from ${from}.`;
}
