import type { Progress, Try } from './progress';

/** An idea that can be woken up, and the lesson it comes from. */
export interface Waking {
  readonly id: string;
  readonly lesson: number;
}

/** Wake-up calls in one visit. Source: teaching practice, two or three calls spaced from their lesson. */
export const A_VISIT = 3;
/** Days from a lesson, or from a wrong call, to the next call of its idea. Source: common practice. */
const FIRST_DAYS = 1;
/** Days between the calls after that, always the same: spaced calls teach more, and growing gaps no more than even ones. Source: common practice. */
const EVEN_DAYS = 4;
/** So many lessons before the newest count as far back. */
const BACK = 3;

const PREFIX = 'wake/';

/** Name under which the tries at a wake-up call are kept: its idea and its seed. */
export const wakeId = (idea: string, seed: number): string => `${PREFIX}${idea}/${seed}`;

const seedIn = (id: string): number =>
  id.startsWith(PREFIX) ? Number(id.slice(id.lastIndexOf('/') + 1)) : -1;

/** A seed above all that were called so far, so that no call comes twice. */
export const nextSeed = ({ calls }: Progress): number =>
  1 + Object.keys(calls).reduce((most, id) => Math.max(most, seedIn(id) || 0), -1);

/** An idea whose lesson was begun: whether it went wrong last, and from which day it is due. */
interface Stand extends Waking {
  readonly wrong: boolean;
  readonly dueDay: number;
}

/** Calls whose names fit, the oldest seed first, each with its tries. */
const triesAt = ({ calls }: Progress, fits: (id: string) => boolean): readonly (readonly Try[])[] =>
  Object.entries(calls)
    .filter(([id, tries]) => fits(id) && tries.length > 0)
    .sort(([a], [b]) => seedIn(a) - seedIn(b))
    .map(([, tries]) => tries);

function standOf(progress: Progress, waking: Waking): Stand | undefined {
  const taught = triesAt(progress, (id) => Number.parseInt(id, 10) === waking.lesson);
  if (taught.length === 0) return undefined;
  const woken = triesAt(progress, (id) => id.startsWith(`${PREFIX}${waking.id}/`)).flat();
  const last = woken.at(-1);
  const wrong = last ? !last.right : taught.some((tries) => tries.at(-1)?.right === false);
  const days = (last ? [last] : taught.flat()).map(({ day }) => day ?? 0);
  const wait = last && !wrong ? EVEN_DAYS : FIRST_DAYS;
  return { ...waking, wrong, dueDay: days.reduce((a, b) => Math.max(a, b)) + wait };
}

const stands = (progress: Progress, wakings: readonly Waking[]): readonly Stand[] =>
  wakings.flatMap((waking) => standOf(progress, waking) ?? []);

/** The first day on which an idea is due; none before the first lesson. */
export function dueFrom(progress: Progress, wakings: readonly Waking[]): number | undefined {
  const days = stands(progress, wakings).map(({ dueDay }) => dueDay);
  return days.length === 0 ? undefined : days.reduce((a, b) => Math.min(a, b));
}

/** Ideas of the lessons before this one that went wrong last, at most three, the longest known first. */
export const wentWrong = (
  progress: Progress,
  wakings: readonly Waking[],
  before: number
): readonly Waking[] =>
  stands(progress, wakings)
    .filter(({ wrong, lesson }) => wrong && lesson < before)
    .sort((a, b) => a.dueDay - b.dueDay)
    .slice(0, A_VISIT)
    .map(({ id, lesson }) => ({ id, lesson }));

/**
 * The ideas to wake up on a day, three at most: one of the newest lesson, one from three or more
 * before it, and one more; those that went wrong before others, then the longest due. Lessons are
 * mixed as far as they go. `day` may be Infinity: then all that was begun counts as due.
 */
export function toWake(
  progress: Progress,
  wakings: readonly Waking[],
  day: number
): readonly Waking[] {
  const begun = stands(progress, wakings);
  const newest = begun.reduce((most, { lesson }) => Math.max(most, lesson), 0);
  const due = begun
    .filter(({ dueDay }) => dueDay <= day)
    .sort((a, b) => Number(b.wrong) - Number(a.wrong) || a.dueDay - b.dueDay);
  const picked: Stand[] = [];
  const take = (fits: (stand: Stand) => boolean) => {
    const left = due.filter((each) => !picked.includes(each) && fits(each));
    const other = left.find(({ lesson }) => picked.every((each) => each.lesson !== lesson));
    const found = other ?? left[0];
    if (found && picked.length < A_VISIT) picked.push(found);
  };
  take(({ lesson }) => lesson === newest);
  take(({ lesson }) => lesson <= newest - BACK);
  while (picked.length < Math.min(A_VISIT, due.length)) take(() => true);
  return [...picked]
    .sort((a, b) => Number(b.wrong) - Number(a.wrong))
    .map(({ id, lesson }) => ({ id, lesson }));
}
