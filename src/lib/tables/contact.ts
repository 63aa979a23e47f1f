/** A place where two conductors touch. */
export type Contact =
  | 'toggle'
  | 'rotary selector'
  | 'push'
  | 'micro-switch'
  | 'plug contact'
  | 'terminal'
  | 'rail joiner'
  | 'aligned joint'
  | 'wheel on rail';

/** A contact's resistance and what it rests on. */
export interface ContactEntry {
  /** Resistance to reckon with, Ω. */
  readonly ohms: number;
  /** Ceiling when new, Ω, where makers state one. */
  readonly ohmsNewAtMost?: number;
  readonly source: string;
}

/** Resistance of one closed contact, Ω. */
export const contacts: Readonly<Record<Contact, ContactEntry>> = {
  toggle: { ohms: 0.02, ohmsNewAtMost: 0.02, source: 'common catalogues, from memory' },
  'rotary selector': { ohms: 0.02, source: 'common practice' },
  push: { ohms: 0.03, source: 'common practice' },
  'micro-switch': { ohms: 0.03, ohmsNewAtMost: 0.03, source: 'common catalogues, from memory' },
  'plug contact': { ohms: 0.01, source: 'common practice' },
  terminal: { ohms: 0.002, source: 'common practice' },
  'rail joiner': { ohms: 0.05, source: 'common practice; never count on it' },
  'aligned joint': { ohms: 0.05, source: 'common practice' },
  'wheel on rail': { ohms: 0.1, source: 'common practice' }
};

/** Resistance of a hand meter on its volts range, Ω. Source: common practice. */
export const voltmeterOhms = 10e6;

/** What a hand meter may be out by, as a share of what it shows. Source: common practice. */
export const meterError = 0.02;
