import type { CardLine } from './card';
import { differs } from './line';
import { meterVoltsText, ohmsText } from '../../yard';

/** What a typed reading comes to. */
export interface Verdict {
  readonly state: 'none' | 'ok' | 'off' | 'unread';
  /** "ok", "off by 0.8 V", or what to type instead. */
  readonly words: string;
}

const NUMBER = /^([+-]?(?:\d+\.?\d*|\.\d+))\s*([mkM]?)\s*(v|volts?|ω|ohms?|r)?$/i;
const OPEN = /^(open|o\.?l\.?|0\.?l\.?|inf|infinity|∞)$/i;
const PREFIX: Readonly<Record<string, number>> = { m: 1e-3, k: 1e3, K: 1e3, M: 1e6 };

/**
 * What was typed, V or Ω: "11.6", "11,6 V", "0.13 Ω", "1.2 k", "open" or "OL"; undefined where it is
 * no reading. Infinity is an open circuit.
 */
export function typedValue(text: string): number | undefined {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  if (OPEN.test(plain)) return Infinity;
  const [, digits, prefix = ''] = NUMBER.exec(plain) ?? [];
  return digits === undefined ? undefined : Number(digits) * (PREFIX[prefix] ?? 1);
}

const sizeText = (value: number, unit: CardLine['unit']): string =>
  unit === 'Ω' ? ohmsText(value) : meterVoltsText(value);

/** A typed reading against what the engine expects. */
export function verdictOf(
  { expected, unit }: Pick<CardLine, 'expected' | 'unit'>,
  text: string
): Verdict {
  if (text.trim() === '') return { state: 'none', words: '' };
  const met = typedValue(text);
  if (met === undefined || (unit === 'V' && met === Infinity)) {
    const such = unit === 'Ω' ? 'ohms such as 0.13, or open' : 'volts such as 11.6';
    return { state: 'unread', words: `no reading: type ${such}` };
  }
  if (!differs(expected, met)) return { state: 'ok', words: 'ok' };
  if (!Number.isFinite(expected) || !Number.isFinite(met))
    return { state: 'off', words: `off: ${sizeText(expected, unit)} expected` };
  if (unit === 'V' && !differs(expected, -met))
    return { state: 'off', words: 'off: the wrong way round' };
  return { state: 'off', words: `off by ${sizeText(Math.abs(met - expected), unit)}` };
}
