import { ratedParts } from '../checks';
import { contactAmps } from '../tables';
import { ampsText, wire, type Yard } from '../yard';
import { plugSizes } from './contactRows';
import type { Sheet } from './sheet';

/** Spare contacts to leave. Source: common practice. */
const SPARE = 2;
const LARGEST = plugSizes.at(-1) as number;

/** A contact of a plug: its number, the part of the wiring it is, and what it carries. */
export interface PlugContact {
  readonly number: number;
  /** Id of its part; a spare one has none. */
  readonly place: string | undefined;
  readonly carries: 'feed' | 'return' | 'spare';
  /** The road it feeds. */
  readonly road: string | undefined;
}

/** A plug of the lead. */
export interface Plug {
  readonly size: number;
  readonly contacts: readonly PlugContact[];
}

/** The least plug with room for a yard's contacts and two spare ones; the largest there is where none has. */
export const plugSize = (used: number): number =>
  plugSizes.find((size) => size >= used + SPARE) ?? LARGEST;

/** Every plug of the lead; a second one only where one has too few contacts. None where the deck is wired for good. */
export function plugsOf(yard: Yard): readonly Plug[] {
  const used = wire(yard).flatMap(({ parts, road }) =>
    parts.filter(({ kind }) => kind === 'plug').map(({ id }) => ({ place: id, road }))
  );
  return Array.from({ length: Math.ceil(used.length / LARGEST) }, (_, index) => {
    const own = used.slice(index * LARGEST, (index + 1) * LARGEST);
    const size = plugSize(own.length);
    return {
      size,
      contacts: Array.from({ length: size }, (__, at): PlugContact => {
        const { place, road } = own[at] ?? {};
        const job = road === undefined ? 'return' : 'feed';
        return { number: at + 1, place, road, carries: place === undefined ? 'spare' : job };
      })
    };
  });
}

/** Whether the return's contacts carry what they see, and how many would. */
function returnWords(amps: ReadonlyMap<string, number>, plugs: readonly Plug[]): string {
  const own = plugs
    .flatMap(({ contacts }) => contacts)
    .filter(({ carries }) => carries === 'return');
  const sum = own.reduce((all, { place = '' }) => all + (amps.get(place) ?? 0), 0);
  const need = Math.max(Math.ceil(sum / contactAmps['plug contact'].amps - 1e-9), 1);
  const each = ampsText(contactAmps['plug contact'].amps);
  const shared = `The return carries ${ampsText(sum)} when every loco is held at once; a contact may carry ${each}.`;
  if (own.length < need) return `${shared} Take ${need} contacts for it: ${own.length} is too few.`;
  return own.length === 1
    ? `${shared} One contact is enough for the amps; a second one keeps the deck alive when one fails.`
    : `${shared} It has ${own.length} contacts side by side.`;
}

const CARRIES = { feed: 'feed of road ', return: 'return, shared', spare: 'spare' } as const;

/** Every contact of the lead's plug: what it carries, and how much. The page draws its faces under it. */
export const plug: Sheet = {
  id: 'plug',
  title: 'Plug table',
  make(yard) {
    const plugs = plugsOf(yard);
    if (plugs.length === 0)
      return { says: ['The deck is wired for good: there is no plug.'], tables: [] };
    const amps = new Map(ratedParts(yard).map(({ id, normal }) => [id, normal]));
    const all = plugs.flatMap(({ contacts }) => contacts);
    const used = all.filter(({ carries }) => carries !== 'spare').length;
    const sizes = plugs.map(({ size }) => `of ${size} contacts`).join(' and one ');
    return {
      says: [
        `A plug ${sizes}: ${used} in use, ${all.length - used} spare.`,
        ...(plugs.length > 1
          ? ['Take two plugs of one kind, and mark them so that they cannot be exchanged.']
          : []),
        returnWords(amps, plugs),
        'Seen from its mating side the plug is the mirror of its solder side. The socket’s solder side looks as the plug’s mating side does. Count from contact 1: the numbers moulded beside the contacts win over any drawing.'
      ],
      tables: plugs.map(({ contacts }, index) => ({
        title: plugs.length > 1 ? `Contacts of plug ${index + 1}` : 'Contacts',
        columns: ['Contact', 'Carries', 'Amps in use', 'Tested'],
        rows: contacts.map(({ number, place, carries, road }) => [
          number,
          carries === 'feed' ? CARRIES.feed + road : CARRIES[carries],
          place === undefined ? '' : ampsText(amps.get(place) ?? 0),
          ''
        ])
      }))
    };
  }
};
