import { dropShare } from '../tables';
import type { Scene, Yard } from '../yard';

/** How bad it is: it breaks locos or wires, it is worth a thought, or it is as it should be. */
export type Grade = 'must fix' | 'think' | 'fine';

/** A moment of a yard, to be seen on a board. */
export interface Sight {
  readonly yard: Yard;
  readonly scene: Scene;
}

/** Figures to look up, behind a finding. */
export interface Figures {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** One thing a check has to say, in sentences of a modeller. */
export interface Finding {
  readonly grade: Grade;
  /** What is so, as one sentence. */
  readonly what: string;
  /** Names of the roads, wires or contacts it is about. */
  readonly where: readonly string[];
  /** How much, with its unit. */
  readonly amount: string;
  readonly why: string;
  /** What to do about it. */
  readonly cure: string;
  /** The cure as a change of the yard, where the yard so changed was tried and is rid of it. */
  readonly change?: Partial<Yard>;
  /** A published source, `common practice`, or `the engine` for what is computed from this yard alone. */
  readonly source: string;
  /** A board to see it on. */
  readonly board?: Sight;
  readonly figures?: Figures;
}

/** What the user may set. */
export interface CheckOptions {
  /** Greatest share of the supply's volts that wires may take. Source: NEM 604 cl. 2.2. */
  readonly dropShare: number;
}

/** What they are until somebody sets them. */
export const defaultOptions: CheckOptions = { dropShare };

/** One check: a question about a yard, answered with findings. */
export interface Check {
  readonly id: string;
  readonly title: string;
  readonly run: (yard: Yard, options: CheckOptions) => readonly Finding[];
}
