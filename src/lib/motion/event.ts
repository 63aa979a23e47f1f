import type { Standing } from '../yard';

/** Something that happened to a loco, or to other stock, on its way. */
export interface MotionEvent {
  /**
   * `backstop`, `barrier`: held there. `bump`: met `other`. `joint`: went over onto `road`.
   * `gap`: no rails before it, so it fell.
   */
  readonly kind: 'backstop' | 'barrier' | 'bump' | 'joint' | 'gap';
  /** The vehicle, which leads its train where it met something. */
  readonly loco: string;
  readonly end: 'west' | 'east';
  readonly tick: number;
  /** The road on which it stands, or which it left for the gap. */
  readonly road: string;
  readonly other?: string;
}

/** An event as it happens within a step. */
export type Happened = Omit<MotionEvent, 'tick'>;

/** What came of a step: where the vehicles of a train stand, and what happened. */
export interface Arrival {
  readonly standings: Readonly<Record<string, Standing>>;
  readonly events: readonly Happened[];
  /** What it leans on from now on. */
  readonly contact?: string;
}
