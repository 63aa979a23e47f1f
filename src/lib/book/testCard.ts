import { meterVoltsText, ohmsText, type Yard } from '../yard';
import { cardOf, type Card, type CardLine } from './card/card';
import type { Page, Sheet, Table } from './sheet';

/** A reading as a meter shows it. */
export const readingText = (value: number, unit: CardLine['unit']): string =>
  unit === 'Ω' ? ohmsText(value) : meterVoltsText(value);

/** Tests that a meter which is read at rest cannot make. */
export const byHand = (yard: Yard): Table => ({
  title: 'By hand',
  columns: ['What to do', 'What to see', 'Seen', 'Initials'],
  rows: [
    ...(yard.stablingRoads > 0 || yard.runningRoad === 'interlocked'
      ? [
          [
            'Draw the pin 1 mm at a time, lamp across the road that it feeds',
            'Dark before the pin is clear of its hole',
            '',
            ''
          ]
        ]
      : []),
    ...(yard.plug
      ? [['Wiggle the lead and the plug, lamp on a deck road', 'The lamp does not blink', '', '']]
      : []),
    ['Tap every switch and joint, lamp on its road', 'The lamp does not blink', '', '']
  ]
});

const hiddenTable = ({ hidden }: Card): Table => ({
  title: 'What hides',
  columns: ['Fault', 'Why no reading shows it as the yard stands', 'Shown by'],
  rows: hidden.map(({ faults, why, line }) => [
    faults.join(' '),
    why,
    line === undefined ? 'No line: look at the joint, and buzz it by itself' : `Line ${line}`
  ])
});

/** How far the card is to be trusted, in words. */
function guarantee({ sections, whole, faults, hidden }: Card): string {
  const lines = sections.reduce((sum, each) => sum + each.lines.length, 0);
  const all =
    lines < whole
      ? `These ${lines} lines are enough: each of the ${faults} single faults that this yard can have changes one of them by more than a meter’s error.`
      : `Each of the ${faults} single faults that this yard can have changes at least one of these ${lines} lines by more than a meter’s error.`;
  const nothing = hidden
    .filter(({ line }) => line === undefined)
    .reduce((sum, each) => sum + each.faults.length, 0);
  return nothing === 0
    ? all
    : `${all} Left out of this are ${nothing}, listed at the end with the reason.`;
}

/** A card as a page of the book, a place beside each line for what was read. */
export const cardPage = (yard: Yard, card: Card): Page => ({
  says: [
    'Dead tests first: supply unplugged, every loco and coach off the rails.',
    'If the lamp in the feed glows at first power, stop and look for a short.',
    'A reading within 2 % or 0.1 of what is expected passes.',
    guarantee(card)
  ],
  tables: [
    ...card.sections.map(({ title, lines }): Table => ({
      title,
      columns: ['No.', 'Set', 'Stands', 'Probes', 'Expected', 'Read', 'Pass', 'Initials'],
      rows: lines.map(({ number, set, stands, where, unit, expected }) => [
        number,
        set,
        stands,
        where,
        readingText(expected, unit),
        '',
        '',
        ''
      ])
    })),
    byHand(yard),
    ...(card.hidden.length > 0 ? [hiddenTable(card)] : [])
  ]
});

/**
 * Every test in order, with what the engine expects; a place for what was read. A large yard takes a
 * second or more: a page that must not stand still asks `cardSteps` in a worker.
 */
export const testCard: Sheet = {
  id: 'test-card',
  title: 'Test card',
  make: (yard) => cardPage(yard, cardOf(yard))
};
