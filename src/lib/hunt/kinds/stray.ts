import { joinWords } from '../../yard';
import type { Moment } from '../moment';
import { surely, type TestKind } from './kind';

const placeOf = ({ id, kind, roads, others }: Moment): string => {
  const [, stop] = / at (.+)$/.exec(id) ?? [];
  const deck = stop === undefined ? '' : ` with the deck at ${stop}`;
  if (kind === 'unpinned') return `road ${others.join()}${deck}`;
  return kind === 'own' ? `when road ${roads.join()} is on,${deck}` : deck.trim();
};

/** What else runs that should not: with nothing switched on, only one road, or the pin drawn. */
export const stray: TestKind = {
  key: 'stray',
  make(_, moment) {
    const { others, kind } = moment;
    if (others.length === 0) return [];
    const outcomes = [
      { id: 'none', words: 'none does' },
      ...others.map((road) => ({ id: road, words: `only the one on road ${road} does` })),
      { id: 'several', words: 'more than one does' }
    ];
    const where =
      others.length > 3 ? 'each road that is off' : `road ${joinWords(others, 'and then on road')}`;
    return [
      {
        id: `stray, ${moment.id}`,
        kind: kind === 'unpinned' ? 'pin drawn' : 'stray',
        moment,
        words: `Put a loco on ${where}: does one run?`,
        place: placeOf(moment),
        cost: others.length > 3 ? 2 : 1,
        outcomes,
        byLive: true,
        shares({ live }) {
          const one = others.indexOf(live[0] ?? '') + 1;
          return surely(live.length > 1 ? outcomes.length - 1 : one, outcomes.length);
        }
      }
    ];
  }
};
