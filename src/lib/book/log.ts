import type { Sheet } from './sheet';

const BLANK_LINES = 16;

/** A blank log of faults. */
export const faultLog: Sheet = {
  id: 'log',
  title: 'Fault log',
  make: () => ({
    says: [
      'One line a fault: what was seen, what was measured, what was mended, and which test proved it.'
    ],
    tables: [
      {
        title: 'Faults',
        columns: ['Date', 'Seen', 'Measured', 'Mended', 'Proved by', 'Initials'],
        rows: Array.from({ length: BLANK_LINES }, () => ['', '', '', '', '', ''])
      }
    ]
  })
};
