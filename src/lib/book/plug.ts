import { ratedParts } from '../checks';
import { ampsText, wire, type Yard } from '../yard';
import type { Sheet } from './sheet';

/** Contacts of plugs that are sold. Source: common practice. */
const SIZES = [5, 9, 15, 25, 37, 50] as const;

/** Spare contacts to leave. Source: common practice. */
const SPARE = 2;

const contactsOf = (yard: Yard) =>
  wire(yard).flatMap(({ parts, road }) =>
    parts.filter(({ kind }) => kind === 'plug').map(({ id }) => ({ id, road }))
  );

/** The least plug with room for a yard's contacts and two spare ones; the largest there is where none has. */
export const plugSize = (used: number): number =>
  SIZES.find((size) => size >= used + SPARE) ?? (SIZES.at(-1) as number);

/** Every contact of the lead's plug: what it carries, and how much. */
export const plug: Sheet = {
  id: 'plug',
  title: 'Plug table',
  make(yard) {
    const used = contactsOf(yard);
    if (used.length === 0)
      return { says: ['The deck is wired for good: there is no plug.'], tables: [] };
    const amps = new Map(ratedParts(yard).map(({ id, normal }) => [id, normal]));
    const size = plugSize(used.length);
    const fits = used.length <= size;
    return {
      says: [
        fits
          ? `A plug of ${size} contacts: ${used.length} in use, ${size - used.length} spare.`
          : `${used.length} contacts are more than the ${size} of the largest usual plug: take two plugs of one kind, marked so that they cannot be exchanged.`,
        'Seen from its mating side the plug is the mirror of its solder side: count from contact 1, which is marked.'
      ],
      tables: [
        {
          title: 'Contacts',
          columns: ['Contact', 'Carries', 'Amps in use', 'Tested'],
          rows: [
            ...used.map(({ id, road }, index) => [
              index + 1,
              road === undefined ? 'return, shared' : `feed of road ${road}`,
              ampsText(amps.get(id) ?? 0),
              ''
            ]),
            ...Array.from({ length: Math.max(size - used.length, 0) }, (_, index) => [
              used.length + index + 1,
              'spare',
              '',
              ''
            ])
          ]
        }
      ]
    };
  }
};
