const DAY_MS = 86_400_000;

/** The day it is where the reader is, counted from 1 January 1970. */
export function today(): number {
  const now = new Date();
  return Math.floor((now.getTime() - now.getTimezoneOffset() * 60_000) / DAY_MS);
}

/** A day as 2026-11-25. */
export const isoDay = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/** A day as "25 Nov". */
export const dayWords = (day: number): string =>
  new Date(day * DAY_MS).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'short',
    timeZone: 'UTC'
  });
