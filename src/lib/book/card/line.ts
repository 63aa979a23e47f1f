import { meterError } from '../../tables';
import {
  holeAt,
  isOn,
  joinWords,
  pointName,
  switchedRoads,
  type Edit,
  type Scene,
  type Yard
} from '../../yard';

/** Ids of the two points at which the probes are held. */
export type Pair = readonly [string, string];

/** One line of the card: what hands set, where the probes go, and how it is measured. */
export interface TestLine {
  /** The road whose rails it asks about; lines of the whole yard have none. */
  readonly road?: string;
  /** What hands set, in words: "A on, plug out". */
  readonly set: string;
  /** Where the probes go, in words. */
  readonly where: string;
  readonly probes: Pair;
  readonly scene: Scene;
  /** `ohms` with the supply unplugged, `volts` as they are, `load` with a test lamp beside the meter. */
  readonly how: 'ohms' | 'volts' | 'load';
  /** It guards against what is no single fault, such as a short, and is never left out. */
  readonly always?: true;
  /** A wire is opened for it. */
  readonly opens?: true;
}

/** The instruments of a line, held to its points. */
export const held = ({ how, probes: [a, b] }: TestLine): readonly Edit[] => {
  if (how === 'ohms') return [{ ohms: [a, b] }];
  return [...(how === 'load' ? [{ testLamp: [a, b] as [string, string] }] : []), { volts: [a, b] }];
};

export const unitOf = ({ how }: Pick<TestLine, 'how'>): 'Ω' | 'V' => (how === 'ohms' ? 'Ω' : 'V');

/** The switches that are made, in words: "A on", "selector at A", "A and 1 held", "all off". */
function switchesWords(yard: Yard, scene: Scene): string {
  const all = switchedRoads(yard);
  const on = all.filter((road) => isOn(yard, scene, road));
  if (all.length === 0) return 'as it stands';
  if (on.length === 0) return yard.switching === 'rotary' ? 'selector off' : 'all off';
  if (yard.switching === 'rotary') return `selector at ${on.join('-')}`;
  const word = yard.switching === 'pushes' ? 'held' : 'on';
  return on.length > 1 && on.length === all.length
    ? `all ${word}`
    : `${joinWords(on, 'and')} ${word}`;
}

/** What hands set for a scene, in words. */
export function setWords(yard: Yard, scene: Scene): string {
  const opened = scene.edits.flatMap((edit) => ('off' in edit ? [edit.off] : []));
  return [
    switchesWords(yard, scene),
    ...(scene.plug === 'out' ? ['plug out'] : []),
    ...(opened.length > 0 ? [`${joinWords(opened, 'and')} open`] : [])
  ].join(', ');
}

/** Where deck and pin stand, in words: "deck at B, pin home"; empty where the deck does not move. */
export function standsWords(yard: Yard, { pin, deck }: Scene): string {
  const hole = holeAt(yard, deck);
  return hole ? `deck at ${hole.name}, pin ${pin}` : '';
}

/** The two points in words. */
export const probesWords = (probes: Pair): string => probes.map(pointName).join(' – ');

/** What a meter may be out by, as a share of a reading and at least, V or Ω. Source: common practice. */
export const METER_ERROR = { share: meterError, least: 0.1 };

/** Whether two readings, V or Ω, differ by more than a meter's error; Infinity is an open circuit. */
export function differs(expected: number, met: number): boolean {
  if (expected === met) return false;
  if (!Number.isFinite(expected) || !Number.isFinite(met)) return true;
  const { share, least } = METER_ERROR;
  return Math.abs(met - expected) > Math.max(share * Math.abs(expected), least);
}
