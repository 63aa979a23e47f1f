import { sizeWords } from '../tables';
import type { Yard } from '../yard';
import { colourText, schemeWords } from './colours';
import type { Sheet, Table } from './sheet';
import { cutM, wiresOf, type Wire } from './wires';

const isRail = (end: string): boolean => / rail /.test(end);
const isTerminal = (end: string): boolean => end === 'feed' || end === 'return';

/** What a wire is for, in words. */
export function purpose({ job, road }: Wire): string {
  if (job === 'lamp') return `lamp ${road ?? ''}`.trim();
  return road === undefined ? `${job}, whole yard` : `${job} of road ${road}`;
}

const jointOf = (end: string): string => {
  if (isRail(end)) return 'soldered to the rail';
  return isTerminal(end) ? 'screw terminal' : 'soldered';
};

/** How both ends are joined; told once where both are joined alike. Source: common practice. */
const jointWords = ({ from, to }: Wire): string => [...new Set([from, to].map(jointOf))].join(', ');

const plugContact = ({ from, to }: Wire): string =>
  [from, to].find((end) => end.startsWith('plug '))?.replace(/, .*/, '') ?? '';

/** Each size of wire in three notations. */
const sizes = (yard: Yard): Table => ({
  title: 'Sizes of wire',
  columns: ['Size', 'That is'],
  rows: [...new Set(wiresOf(yard).map(({ size }) => size))].map((size) => [size, sizeWords(size)])
});

/** Every wire: from where to where, what it is, and room to tick it off. */
export const schedule: Sheet = {
  id: 'schedule',
  title: 'Wiring schedule',
  make: (yard) => ({
    says: [
      'Change wiring only with the supply unplugged.',
      'A road’s wire is shared out evenly over its pieces: measure before you cut. Lengths to cut hold 10 % and 0.1 m more: common practice.',
      schemeWords(yard)
    ],
    tables: [
      sizes(yard),
      {
        title: 'Wires',
        columns: [
          'No.',
          'From',
          'To',
          'For',
          'Colour',
          'Size',
          'As laid, m',
          'Cut, m',
          'Plug contact',
          'Joints',
          'Laid',
          'Tested'
        ],
        rows: wiresOf(yard).map((wire) => [
          wire.number,
          wire.from,
          wire.to,
          purpose(wire),
          colourText(yard, wire),
          wire.size,
          Number(wire.lengthM.toFixed(3)),
          Number(cutM(wire).toFixed(2)),
          plugContact(wire),
          jointWords(wire),
          '',
          ''
        ])
      }
    ]
  })
};
