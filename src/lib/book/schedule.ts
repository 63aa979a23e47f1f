import { sizeWords } from '../tables';
import { joinWords, once, type Yard } from '../yard';
import { colourText, schemeWords } from './colours';
import type { Sheet, Table } from './sheet';
import { cutM, wiresOf, type Wire } from './wires';

const isRail = (end: string): boolean => /^(feed|return) rail /.test(end);
const isTerminal = (end: string): boolean => /^(feed|feed 2|return|lamp [+-])$/.test(end);

/** What a wire is for, in words. */
export function purpose({ job, road }: Wire): string {
  if (job === 'lamp') return `lamp ${road ?? ''}`.trim();
  return road === undefined ? `${job}, whole yard` : `${job} of road ${road}`;
}

/** Wires named at a terminal that they share, before they are counted. */
const NAMED = 4;

/** The numbers of the wires at each terminal. */
const wiresAt = once((yard: Yard): ReadonlyMap<string, readonly number[]> => {
  const at = new Map<string, readonly number[]>();
  for (const { number, from, to } of wiresOf(yard)) {
    for (const end of [from, to]) at.set(end, [...(at.get(end) ?? []), number]);
  }
  return at;
});

/** How an end is joined, and with which other wires. Source: common practice. */
function jointOf(yard: Yard, end: string, number: number): string {
  const how = isTerminal(end) ? 'screw terminal' : 'soldered';
  const joint = isRail(end) ? 'soldered to the rail' : how;
  const others = (wiresAt(yard).get(end) ?? []).filter((each) => each !== number);
  if (others.length === 0) return joint;
  return others.length > NAMED
    ? `${joint} with ${others.length} other wires`
    : `${joint} with ${joinWords(others.map(String), 'and')}`;
}

/** How both ends of a wire are joined. */
const jointWords = (yard: Yard, { number, from, to }: Wire): string =>
  [from, to].map((end) => jointOf(yard, end, number)).join('; ');

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
          jointWords(yard, wire),
          '',
          ''
        ])
      }
    ]
  })
};
