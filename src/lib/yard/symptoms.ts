import type { Fault } from './faults';
import { locoNamed, startingVolts } from './locos';
import { lampRoads, lampState } from './lamps';
import { held } from './reading';
import type { Scene } from './scene';
import { trialsOf, type Trial } from './trials';
import type { Yard } from './yard';

/** One thing that somebody who works the yard would report. */
export interface Symptom {
  /**
   * `dead`, `slow`, `backwards`: the road, fed as it should be. `live off`: with every switch off.
   * `follows`: when only another road is switched on. `live unpinned`: with the pin out.
   * `short`: the controller is at its limit once the road is switched on, or whatever is.
   * `short across`: it is while wheels stand on two roads. `lamp dark`, `lamp burnt`: the road's
   * panel lamp, with the road switched on; three times its current burns an LED.
   */
  readonly kind:
    | 'dead'
    | 'slow'
    | 'backwards'
    | 'live off'
    | 'follows'
    | 'live unpinned'
    | 'short'
    | 'short across'
    | 'lamp dark'
    | 'lamp burnt';
  readonly road?: string;
  /** The road which it follows, or on which the other wheels stand. */
  readonly other?: string;
  /** The stops at which it shows, where it does not at all of them. */
  readonly at?: readonly string[];
}

/** Volts by which a road must fall short of a sound yard's to be called slow. Source: common practice. */
const SLOW_VOLTS = 1;

const isLive = (volts: number): boolean => Math.abs(volts) >= startingVolts(locoNamed('Plover'));

/** Share of the current it is meant to have from which an LED is taken to burn. Source: common practice. */
const BURNT = 3;

interface Seen {
  readonly limiting: boolean;
  /** Amps of the lamp of the road that is switched on. */
  readonly lamp: number;
  readonly volts: readonly number[];
}

function see(yard: Yard, { scene, asked, pair }: Trial, faults: Scene['faults']): Seen {
  const { limiting, volts, amps } = held(yard, { ...scene, faults });
  const road = lampRoads(yard).find((each) => each === pair[0]);
  return { limiting, volts: asked.map(volts), lamp: road ? amps(`lamp ${road}`) : 0 };
}

/** What a road that should be live shows instead. */
function fallShort(road: string, before: number, after: number): readonly Symptom[] {
  if (!isLive(after)) return [{ kind: 'dead', road }];
  if (before * after < 0) return [{ kind: 'backwards', road }];
  return Math.abs(before) - Math.abs(after) > SLOW_VOLTS ? [{ kind: 'slow', road }] : [];
}

function lampShows({ kind, pair }: Trial, sound: Seen, now: Seen): readonly Symptom[] {
  const [road] = pair;
  if (kind !== 'own' || road === undefined || lampState(sound.lamp) !== 'lit') return [];
  if (lampState(now.lamp) !== 'lit') return [{ kind: 'lamp dark', road }];
  return now.lamp > BURNT * sound.lamp ? [{ kind: 'lamp burnt', road }] : [];
}

/** What a trial shows of a faulty yard that it does not of a sound one. */
function compare(trial: Trial, sound: Seen, now: Seen): readonly Symptom[] {
  const { kind, asked, judged, pair } = trial;
  const [road, other] = pair;
  if (now.limiting && !sound.limiting) {
    if (kind === 'across') return [{ kind: 'short across', ...(road && other && { road, other }) }];
    return kind === 'unpinned' ? [] : [{ kind: 'short', ...(road && { road }) }];
  }
  return asked.flatMap((name, index): readonly Symptom[] => {
    const [before, after] = [sound.volts[index] ?? 0, now.volts[index] ?? 0];
    if (isLive(before)) return judged.includes(name) ? fallShort(name, before, after) : [];
    if (!isLive(after)) return [];
    if (kind === 'own') return [{ kind: 'follows', road: name, ...(road && { other: road }) }];
    return [{ kind: kind === 'off' ? 'live off' : 'live unpinned', road: name }];
  });
}

const differs = (trial: Trial, sound: Seen, now: Seen): readonly Symptom[] => [
  ...compare(trial, sound, now),
  ...lampShows(trial, sound, now)
];

interface Found {
  readonly symptom: Symptom;
  readonly trial: Trial;
}

const sameSymptom = (a: Symptom, b: Symptom): boolean =>
  a.kind === b.kind && a.road === b.road && a.other === b.other;

/** Leaves out what another symptom says already. */
function isNews({ kind, road, other }: Symptom, all: readonly Found[]): boolean {
  const has = (what: Symptom['kind'], where: string | undefined) =>
    all.some(({ symptom }) => symptom.kind === what && symptom.road === where);
  if (kind === 'follows') return !has('live off', road);
  if (kind === 'short') return road === undefined || !has('short', undefined);
  if (kind !== 'short across') return true;
  return !has('short', undefined) && !has('short', road) && !has('short', other);
}

function gather(all: readonly Found[], tried: readonly Trial[]): readonly Symptom[] {
  const first = all.filter(
    ({ symptom }, index) =>
      all.findIndex((each) => sameSymptom(each.symptom, symptom)) === index && isNews(symptom, all)
  );
  return first.map(({ symptom, trial }) => {
    const shown = all.filter((each) => sameSymptom(each.symptom, symptom));
    const alike = ({ kind, pair, asked }: Trial) =>
      kind === trial.kind && pair[0] === trial.pair[0] && asked.includes(symptom.road ?? '');
    const somewhere = ['live off', 'follows', 'live unpinned'].includes(symptom.kind);
    return somewhere && shown.length < tried.filter(alike).length
      ? { ...symptom, at: shown.flatMap((each) => each.trial.stop ?? []) }
      : symptom;
  });
}

/**
 * A yard tried at each stop: with every switch off, with one on, with the pin out, and with wheels
 * across each joint. The result tells what a fault shows there that the sound yard does not, by the
 * engine's volts at full knob; nothing for a fault that does not show. Several faults are tried at once.
 */
export function symptomsIn(yard: Yard): (...faults: readonly Fault[]) => readonly Symptom[] {
  const tried = trialsOf(yard).map((trial) => ({ trial, sound: see(yard, trial, []) }));
  return (...faults) =>
    gather(
      tried.flatMap(({ trial, sound }) =>
        differs(trial, sound, see(yard, trial, [...faults])).map((symptom) => ({ symptom, trial }))
      ),
      tried.map(({ trial }) => trial)
    );
}
