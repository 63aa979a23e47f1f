import { result, type Progress } from '../../checks';
import { faultsOf, faultWords, sentence, type Yard } from '../../yard';
import { coverSteps, type Cover } from './cover';
import { standsWords, unitOf, type TestLine } from './line';
import { keyOf, sectionsOf, type Section } from './lines';
import { CardReader } from './reader';
import { whyHidden } from './why';

/** A line as it is printed, and filled in at the bench. */
export interface CardLine {
  /** What tells it from others, whatever its number. */
  readonly key: string;
  readonly number: number;
  readonly set: string;
  readonly stands: string;
  readonly where: string;
  readonly unit: 'Ω' | 'V';
  /** V or Ω by the engine; Infinity is an open circuit. */
  readonly expected: number;
}

/** Faults that no reading shows as the yard stands. */
export interface HiddenFaults {
  readonly faults: readonly string[];
  readonly why: string;
  /** Number of the line that shows them with a wire open; none where nothing does. */
  readonly line: number | undefined;
}

/** The test card of a yard: plain data. */
export interface Card {
  readonly sections: readonly { readonly title: string; readonly lines: readonly CardLine[] }[];
  /** How many lines the whole card would have. */
  readonly whole: number;
  /** How many single faults the yard can have. */
  readonly faults: number;
  readonly hidden: readonly HiddenFaults[];
}

/** Most lines of a card that is printed whole: four pages. Source: common practice. */
const MOST_WHOLE = 150;

interface Numbered {
  readonly number: number;
  readonly line: TestLine;
}

/** The lines that are on the card, numbered from 1 through all its parts. */
function numbered(sections: readonly Section[], chosen: ReadonlySet<TestLine>) {
  let number = 0;
  return sections
    .map(({ title, lines }) => ({
      title,
      lines: lines
        .filter((line) => chosen.has(line))
        .map((line): Numbered => ({ number: ++number, line }))
    }))
    .filter(({ lines }) => lines.length > 0);
}

/** Faults that hide for one reason, and show at one line or at none, told together. */
function hiddenFaults(
  { hidden, missed }: Cover,
  all: readonly Numbered[]
): readonly HiddenFaults[] {
  const found = [
    ...hidden.map(({ fault, line }) => ({
      fault,
      line: all.find((each) => each.line === line)?.number
    })),
    ...missed.map((fault) => ({ fault, line: undefined }))
  ].map(({ fault, line }) => ({ words: faultWords(fault), why: whyHidden(fault), line }));
  const groups = new Map<string, HiddenFaults>();
  for (const { words, why, line } of found) {
    const id = `${why} ${line}`;
    const faults = [...(groups.get(id)?.faults ?? []), sentence(words)];
    groups.set(id, { faults, why, line });
  }
  return [...groups.values()];
}

/**
 * The test card of a yard, step by step: each line with what the engine expects. A card of at most
 * `mostWhole` lines has every line, a longer one those which `coverSteps` chooses. Every single fault changes a line on the
 * card by more than a meter's error, or is among the hidden ones with the reason.
 */
export function* cardSteps(yard: Yard, mostWhole = MOST_WHOLE): Generator<Progress, Card> {
  const sections = sectionsOf(yard);
  const lines = sections.flatMap((section) => section.lines);
  const reader = new CardReader(yard, lines);
  const faults = faultsOf(yard);
  const whole = lines.length <= mostWhole;
  const cover = yield* coverSteps(yard, { lines, faults, reader, whole });
  const parts = numbered(sections, cover.chosen);
  return {
    sections: parts.map(({ title, lines: some }) => ({
      title,
      lines: some.map(({ number, line }) => ({
        key: keyOf(line),
        number,
        set: line.set,
        stands: standsWords(yard, line.scene),
        where: line.where,
        unit: unitOf(line),
        expected: reader.reads(line)
      }))
    })),
    whole: lines.length,
    faults: faults.length,
    hidden: hiddenFaults(
      cover,
      parts.flatMap((part) => part.lines)
    )
  };
}

/** The test card, worked out at once. */
export const cardOf = (yard: Yard, mostWhole?: number): Card => result(cardSteps(yard, mostWhole));
