import { bandShares, type Outcome, type TestKind } from './kind';
import { pairWords } from './probes';

const outcomes: readonly Outcome[] = [
  { id: 'none', words: 'under 1 V' },
  { id: 'some', words: 'from 1 V to three quarters of what the controller gives' },
  { id: 'full', words: 'what the controller gives, or nearly' },
  { id: 'reversed', words: 'more than 1 V, with a minus sign' }
];

/** Below this a voltmeter's figure may be a ghost, V. Source: common practice. */
const GHOST_VOLTS = 1;
/** Share of the controller's volts from which a reading counts as all of them. Source: common practice. */
const FULL_SHARE = 0.75;

/** A voltmeter held at two points: it draws next to nothing, so a bad joint does not show. */
export const volts: TestKind = {
  key: 'volts',
  make: (yard, moment) =>
    moment.kind !== 'own' && moment.kind !== 'off'
      ? []
      : moment.pairs.map((pair) => ({
          id: `volts ${pair.join(' to ')}, ${moment.id}`,
          kind: 'volts',
          moment,
          words: `Hold the voltmeter to ${pairWords(pair)}, the red lead first.`,
          place: pairWords(pair),
          cost: 1.5,
          outcomes,
          shares(settled) {
            const edges = [GHOST_VOLTS, FULL_SHARE * yard.supply.volts];
            const shares = bandShares(settled.held('voltmeter', pair), edges);
            const [none = 0] = shares;
            return settled.between(pair) < 0 ? [none, 0, 0, 1 - none] : [...shares, 0];
          }
        }))
};
