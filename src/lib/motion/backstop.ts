import { within, type Standing, type Yard } from '../yard';

/** A loco met the backstop at one end of its road and is held there. */
export interface MotionEvent {
  readonly kind: 'backstop';
  readonly loco: string;
  readonly end: 'west' | 'east';
  readonly tick: number;
}

/** Stops a loco that is at, or past, the end of its road and still pushes on. */
export function backstop(
  yard: Yard,
  loco: string,
  at: Standing,
  tick: number
): { readonly standing: Standing; readonly event?: MotionEvent } {
  const end = at.speed > 0 ? 'east' : 'west';
  const limit = within(yard, loco, at.speed > 0 ? Infinity : -Infinity);
  const gone = at.speed > 0 ? at.atMm >= limit : at.atMm <= limit;
  if (at.speed === 0 || !gone) return { standing: at };
  return {
    standing: { ...at, atMm: limit, speed: 0 },
    event: { kind: 'backstop', loco, end, tick }
  };
}
