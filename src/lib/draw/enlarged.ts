import type { Redrawn } from '../lesson';
import type { Reading, Yard } from '../yard';
import { planLayout } from './plan';
import { rowsLayout } from './rows';

/** Views that can be drawn larger than usual. */
export type LargeView = 'rows' | 'plan';

/** How drawings fill a room on a screen. */
export interface Enlarged {
  readonly views: readonly LargeView[];
  /** Width that they are laid out in, px. */
  readonly width: number;
  /** How much larger than laid out they are shown. */
  readonly times: number;
  /** Whether all of them is in sight at once. */
  readonly whole: boolean;
}

/** A yard to be drawn large. */
interface Subject {
  readonly yard: Yard;
  readonly reading: Reading;
  readonly drawn: Redrawn;
  /** Views wanted, the one that counts most first. */
  readonly views: readonly LargeView[];
}

/** A room on the screen, px. */
interface Room {
  readonly width: number;
  readonly height: number;
}

/** Larger than this nothing is gained; smaller than that one view is better than two. */
const MOST = 2.6;
const LEAST_FOR_ALL = 1.4;
/** Smaller than this its words are too small for a back row: rather not the whole drawing at once. */
const LEAST = 1.3;
const STEP = 0.1;
/** Narrower than this rows are not laid out, px. */
const NARROWEST = 380;
/** Between two views, px. */
const BETWEEN = 16;

function sizeOf({ yard, reading, drawn }: Subject, view: LargeView, width: number): Room {
  return view === 'rows'
    ? rowsLayout(yard, reading.runs, { width, drawn })
    : planLayout(yard, reading.scene.deck, width);
}

function largest(subject: Subject, views: readonly LargeView[], room: Room): Enlarged {
  for (let times = MOST; times >= LEAST; times -= STEP) {
    const width = Math.max(room.width / times, NARROWEST);
    const sizes = views.map((view) => sizeOf(subject, view, width));
    const wide = Math.max(...sizes.map((size) => size.width));
    const high = sizes.reduce((sum, { height }) => sum + height, BETWEEN * (views.length - 1));
    if (high * times <= room.height && wide * times <= room.width + 1) {
      return { views, width, times, whole: true };
    }
  }
  return { views, width: Math.max(room.width / LEAST, NARROWEST), times: LEAST, whole: false };
}

/** The drawings of a yard as large as a room on the screen lets them be: of several views the first alone, where all would be small. */
export function enlarged(subject: Subject, room: Room): Enlarged {
  const all = largest(subject, subject.views, room);
  return subject.views.length === 1 || all.times >= LEAST_FOR_ALL
    ? all
    : largest(subject, subject.views.slice(0, 1), room);
}

/** Where the middle of a road's row is, px from the top of rows laid out so wide. */
export function rowAt({ yard, reading, drawn }: Subject, width: number, road: string): number {
  const { rows } = rowsLayout(yard, reading.runs, { width, drawn });
  const row = rows.find((each) => each.road === road);
  return row ? (row.feedRail.y + row.returnRail.y) / 2 : 0;
}
