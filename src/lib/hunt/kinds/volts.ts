import { secondVolts } from '../../yard';
import { bandIn, bandShares, type Outcome, type TestKind } from './kind';
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

/** A reading so much beyond what the controller gives is none, as a share of it. Source: common practice. */
const BEYOND = 1.1;

const idOf = (volts: number, edges: readonly number[]): string => {
  const band = bandIn(edges, Math.abs(volts));
  return (volts < 0 && band > 0 ? outcomes.at(-1) : outcomes[band])?.id ?? '';
};

/** A voltmeter held at two points: it draws next to nothing, so a bad joint does not show. */
export const volts: TestKind = {
  key: 'volts',
  make(yard, moment) {
    if (moment.kind !== 'own' && moment.kind !== 'off') return [];
    const edges = [GHOST_VOLTS, FULL_SHARE * yard.supply.volts];
    return moment.pairs.map((pair) => ({
      id: `volts ${pair.join(' to ')}, ${moment.id}`,
      kind: 'volts',
      moment,
      words: `Hold the voltmeter to ${pairWords(pair)}, the red lead first.`,
      place: pairWords(pair),
      cost: 1.5,
      outcomes,
      shares(settled) {
        const shares = bandShares(settled.held('voltmeter', pair), edges);
        const [none = 0] = shares;
        return settled.between(pair) < 0 ? [none, 0, 0, 1 - none] : [...shares, 0];
      },
      figure: {
        unit: 'V',
        edges,
        most: BEYOND * Math.max(yard.supply.volts, yard.second ? secondVolts(yard) : 0),
        of: (settled) => Math.sign(settled.between(pair)) * settled.held('voltmeter', pair).exact(),
        outcome: (reading) => idOf(reading, edges)
      }
    }));
  }
};
