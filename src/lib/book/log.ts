import { lampRoads, switchedRoads, type Yard } from '../yard';
import type { Sheet } from './sheet';

const lampWords = (yard: Yard): string =>
  yard.lamps === 'own'
    ? 'A lit lamp says that its switch is on. It says nothing of the plug, the pin or the rails.'
    : 'A lit lamp says that its road’s feed has volts, and the knob stands east. It dims with the knob.';

/** How the yard is worked, on one page. */
export const operator: Sheet = {
  id: 'operator',
  title: 'Operator card',
  make: (yard) => ({
    says: [
      'One road on at a time. Knob to centre, then the old road off, then the new one on.',
      ...(yard.stablingRoads > 0
        ? [
            'Never slide the deck with stock across its edge. Pin home before a loco moves onto or off the deck.'
          ]
        : []),
      ...(yard.runningRoad === 'direct'
        ? ['The running road stays live wherever the deck stands: keep locos back from its end.']
        : []),
      ...(lampRoads(yard).length > 0 ? [lampWords(yard)] : [])
    ],
    tables: [
      {
        title: 'Switches, in the order of the panel',
        columns: ['Road', 'Stock kept there', 'Remarks'],
        rows: switchedRoads(yard).map((road) => [road, '', ''])
      }
    ]
  })
};

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
