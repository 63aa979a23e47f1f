import type { Standing } from '../yard';

/** Something that happened to a loco on its way. */
export interface MotionEvent {
  /**
   * `backstop`, `barrier`: held there. `bump`: met `other`. `joint`: went over onto `road`.
   * `gap`: no rails before it, so it fell.
   */
  readonly kind: 'backstop' | 'barrier' | 'bump' | 'joint' | 'gap';
  readonly loco: string;
  readonly end: 'west' | 'east';
  readonly tick: number;
  /** The road on which it stands, or which it left for the gap. */
  readonly road: string;
  readonly other?: string;
}

/** What came of a step: where the loco stands, and what happened. */
export interface Arrival {
  readonly standing: Standing;
  readonly event?: Omit<MotionEvent, 'tick'>;
}
