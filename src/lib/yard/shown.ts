import { BUZZ_OHMS } from './probe';
import { findPoint, pointName } from './points';
import type { Reading } from './reading';
import type { Instrument } from './runs';
import { ampsText, joinWords, meterVoltsText, ohmsText } from './words';

/** What a test instrument shows, and where its probes are. */
export interface Shown {
  readonly id: string;
  readonly kind: Instrument;
  readonly name: string;
  /** "12.0 V", "0.31 Ω, it buzzes", "dim, 0.14 A". */
  readonly value: string;
  /** "between feed and feed rail B". */
  readonly where: string;
  /** Why the figure means nothing; empty where it means something. */
  readonly note: string;
}

const names: Readonly<Record<Instrument, string>> = {
  voltmeter: 'Voltmeter',
  ohmmeter: 'Ohmmeter',
  'test lamp': 'Test lamp'
};

/** The controller's terminals in one word. */
const shortName = (id: string): string => (id === 'feed' || id === 'return' ? id : pointName(id));

function valueOf(reading: Reading, kind: Instrument, id: string): string {
  if (kind === 'voltmeter') return meterVoltsText(reading.volts(id) ?? 0);
  if (kind === 'test lamp') return `${reading.testLamp}, ${ampsText(reading.amps(id))}`;
  const ohms = reading.ohms ?? Infinity;
  return `${ohmsText(ohms)}${ohms < BUZZ_OHMS ? ', it buzzes' : ''}`;
}

/** A voltmeter tells nothing of what is joined to nothing. */
function noteOn(reading: Reading, held: readonly string[]): string {
  const loose = held.filter(
    (id) => reading.level(findPoint(reading.runs, id).node).joined === 'nothing'
  );
  if (loose.length === 0) return '';
  return `${joinWords(loose.map(pointName), 'and')} ${loose.length > 1 ? 'are' : 'is'} joined to nothing, so the figure means nothing.`;
}

/** What every test instrument of a scene shows. */
export const shown = (reading: Reading): readonly Shown[] =>
  reading.runs.flatMap(({ id, held, parts: [part] }) => {
    if (!held || !part) return [];
    const kind = part.kind as Instrument;
    return [
      {
        id,
        kind,
        name: names[kind],
        value: valueOf(reading, kind, id),
        where: `between ${joinWords(held.map(shortName), 'and')}`,
        note: kind === 'voltmeter' ? noteOn(reading, held) : ''
      }
    ];
  });
