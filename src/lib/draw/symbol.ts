import type { Part } from '../yard';
import type { Glyph } from './run';

/** What a symbol is drawn from; a kind that has none is drawn as nothing. */
interface Drawn {
  readonly kind: Glyph['kind'] | Part['kind'];
  /** Along its wire, px. */
  readonly width: number;
  readonly closed: boolean;
}

/** A line of a symbol, px from its middle along a level wire. */
export interface Stroke {
  readonly d: string;
  /** `link` joins a contact to what works it; `body` is a closed outline, `solid` is filled. */
  readonly role: 'line' | 'link' | 'body' | 'solid';
}

/** What works a contact, at the end of its link. */
const operators: Partial<Readonly<Record<Drawn['kind'], string>>> = {
  toggle: 'M-6 -22H6',
  push: 'M-6 -18V-22H6V-18',
  selector: 'M-6 -18V-22H6V-26',
  'pin contact': 'M-5 -22L0 -28L5 -22'
};

/**
 * The lines of a symbol: make contact (S00227), switch worked by hand (S00253), by push, by turning,
 * by position; resistor, plug and socket. Source: IEC 60617; the push's, the rotary's and the
 * pin's mark from memory.
 */
export function strokesOf({ kind, width, closed }: Drawn): readonly Stroke[] {
  const half = width / 2;
  const operator = operators[kind];
  if (operator !== undefined) {
    const hand = closed ? 0 : -half * 0.4;
    const blade = closed ? `M${-half} 0H${half}` : `M${half} 0L${-half + 4} ${-half * 0.75}`;
    return [
      { d: blade, role: 'line' },
      { d: `M0 ${hand - 2}V-22`, role: 'link' },
      { d: operator, role: 'line' }
    ];
  }
  if (kind === 'plug') {
    const x = closed ? -6 : 1;
    return [
      { d: `M${closed ? -2 : -7} -7a7 7 0 0 0 0 14`, role: 'line' },
      { d: `M${x} -2.5h12v5h-12z`, role: 'solid' }
    ];
  }
  if (kind === 'resistor') return [{ d: `M${-half} -7h${width}v14h${-width}z`, role: 'body' }];
  return kind === 'break' ? [{ d: `M${-half} -6V6M${half} -6V6`, role: 'line' }] : [];
}
