import { BUZZ_OHMS } from '../../yard';
import { bandIn, bandShares, type Outcome, type TestKind } from './kind';
import { pairWords } from './probes';

const outcomes: readonly Outcome[] = [
  { id: 'buzz', words: 'it buzzes' },
  { id: 'ohms', words: `it shows from ${BUZZ_OHMS} Ω to 10 kΩ` },
  { id: 'open', words: 'it shows more, or open' }
];

/** From here on a wire counts as open, Ω. Source: common practice. */
const OPEN_OHMS = 10e3;

const edges = [BUZZ_OHMS, OPEN_OHMS];

/** An ohmmeter with its buzzer: the supply is unplugged, and all stock is off. */
export const ohms: TestKind = {
  key: 'ohms',
  make: (_, moment) =>
    moment.kind !== 'unplugged' && moment.kind !== 'plug out'
      ? []
      : moment.pairs.map((pair) => ({
          id: `ohms ${pair.join(' to ')}, ${moment.id}`,
          kind: moment.kind === 'plug out' ? 'plug out' : 'ohms',
          moment,
          words: `Hold the ohmmeter to ${pairWords(pair)}.`,
          place: pairWords(pair),
          cost: moment.kind === 'plug out' ? 2.5 : 2,
          outcomes,
          shares: (settled) => bandShares(settled.ohms(pair), edges),
          figure: {
            unit: 'Ω',
            edges,
            most: Infinity,
            of: (settled) => settled.ohms(pair).exact(),
            outcome: (ohms) => outcomes[bandIn(edges, ohms)]?.id ?? ''
          }
        }))
};
