import type { Page, Sheet } from './sheet';

/** One fault that was found and mended. */
interface LogLine {
  readonly day: string;
  readonly seen: string;
  readonly measured: string;
  readonly mended: string;
  readonly proved: string;
  readonly by: string;
}

/** Lines of the sheet, those that are filled in among them. */
const LINES = 16;
/** Blank lines that are left at least, however many are filled in. */
const LEAST_BLANK = 6;

/** What a line of the log says, in this order. */
export const logColumns = ['Date', 'Seen', 'Measured', 'Mended', 'Proved by', 'Initials'];

/** A line of the log, by its columns. */
export const logRow = ({ day, seen, measured, mended, proved, by }: LogLine): readonly string[] => [
  day,
  seen,
  measured,
  mended,
  proved,
  by
];

/** The log of faults: what was noted, and blank lines for the pen. */
export function logPage(lines: readonly LogLine[]): Page {
  const blank = Math.max(LINES - lines.length, LEAST_BLANK);
  return {
    says: [
      'One line a fault: what was seen, what was measured, what was mended, and which test proved it.'
    ],
    tables: [
      {
        title: 'Faults',
        columns: logColumns,
        rows: [
          ...lines.map(logRow),
          ...Array.from({ length: blank }, () => logColumns.map(() => ''))
        ]
      }
    ]
  };
}

/** A blank log of faults. */
export const faultLog: Sheet = { id: 'log', title: 'Fault log', make: () => logPage([]) };
