import { meterError } from '../tables';
import { meterVoltsText, ohmsText } from '../yard';
import type { Figure, Outcome, Test } from './kinds/kind';

/** A reading as it was typed: the outcome that it is, or what is wrong with it, in words. */
export type Typed =
  { readonly outcome: Outcome; readonly reading: number | undefined } | { readonly words: string };

const shape = /^([+−–-]?)(\d+(?:[.,]\d*)?|[.,]\d+)([kKmMµu]?)(v|volts?|Ω|ohms?|r)?$/iu;
const openWords = /^(o\.?l\.?|open|inf|infinite|∞)$/i;

const factors: ReadonlyMap<string, number> = new Map([
  ['k', 1e3],
  ['K', 1e3],
  ['M', 1e6],
  ['m', 1e-3],
  ['µ', 1e-6],
  ['u', 1e-6]
]);

/** A meter's reading as it shows it: "−7.3 V", "1.2 kΩ", "open". */
export const figureText = ({ unit }: Figure, reading: number): string =>
  unit === 'V' ? meterVoltsText(reading) : ohmsText(reading);

const example = ({ unit }: Figure): string => (unit === 'V' ? '7.3 V' : '0.4 Ω, 1.2 k or open');

/** The number in a text, in the unit of the figure; words where there is none. */
function numberIn(figure: Figure, text: string): number | string {
  const bare = text.replace(/\s+/g, '');
  if (figure.unit === 'Ω' && openWords.test(bare)) return Infinity;
  const [, sign = '', digits, prefix = '', unit] = shape.exec(bare) ?? [];
  if (digits === undefined)
    return `'${text.trim()}' is no reading: type a number such as ${example(figure)}.`;
  if (unit !== undefined && (unit.toLowerCase().startsWith('v') ? 'V' : 'Ω') !== figure.unit)
    return figure.unit === 'V'
      ? 'This test is in volts: turn the meter to DC volts.'
      : 'This test is in ohms, with the supply unplugged: unplug it, and turn the meter to ohms.';
  const size = Number(digits.replace(',', '.')) * (factors.get(prefix) ?? 1);
  return sign === '' || sign === '+' ? size : -size;
}

const outcomeNamed = (outcomes: readonly Outcome[], id: string): Outcome =>
  outcomes.find((each) => each.id === id) as Outcome;

const isNearEdge = ({ edges }: Figure, reading: number): boolean =>
  edges.some((edge) => Math.abs(Math.abs(reading) / edge - 1) <= meterError);

/** What is wrong with a number as a reading; undefined where nothing is. */
function amiss(figure: Figure, reading: number): string | undefined {
  const shown = figureText(figure, reading);
  if (figure.unit === 'Ω' && reading < 0)
    return `${shown}: ohms are never below 0. Is something still live? Unplug the supply, and measure again.`;
  if (Math.abs(reading) > figure.most)
    return `${shown} is more than the controller gives: look at the meter's range, and measure again.`;
  return isNearEdge(figure, reading)
    ? `${shown} lies on the border of two answers, within the meter's error: measure again, or tick the nearer one.`
    : undefined;
}

/**
 * What a typed reading such as "7.3 V", "0,4 ohm", "1.2 k" or "OL" is as an outcome of a test; without a
 * unit it is in the test's own. A test without a meter takes its outcomes' own words. What cannot be
 * told apart, or cannot be, comes back as words.
 */
export function typed({ figure, outcomes }: Test, text: string): Typed {
  const said = text.trim().toLowerCase();
  const ticked = outcomes.find(({ id, words }) => [id, words].includes(said));
  if (ticked) return { outcome: ticked, reading: undefined };
  if (!figure) {
    const allowed = outcomes.map(({ words }) => `"${words}"`).join(', ');
    return { words: `This test shows no number: tick one of ${allowed}.` };
  }
  const reading = numberIn(figure, text);
  if (typeof reading === 'string') return { words: reading };
  const wrong = amiss(figure, reading);
  if (wrong !== undefined) return { words: wrong };
  return { outcome: outcomeNamed(outcomes, figure.outcome(reading)), reading };
}
