import { litBy } from '../../yard';
import { bandShares, type Outcome, type TestKind } from './kind';
import { pairWords } from './probes';

const outcomes: readonly Outcome[] = [
  { id: 'dark', words: 'it stays dark' },
  { id: 'dim', words: 'it is dim' },
  { id: 'bright', words: 'it is bright' }
];

/** The least volts at which the lamp looks so, V, to a hundredth. */
const least = (lit: ReturnType<typeof litBy>): number =>
  Array.from({ length: 1200 }, (_, index) => index / 100).find((volts) => litBy(volts) === lit) ??
  0;

const edges = [least('dim'), least('bright')];

/** A 12 V test lamp held at two points: a load as a loco is. */
export const testLamp: TestKind = {
  key: 'testLamp',
  make: (_, moment) =>
    moment.kind !== 'own' && moment.kind !== 'off'
      ? []
      : moment.pairs.map((pair) => ({
          id: `lamp ${pair.join(' to ')}, ${moment.id}`,
          kind: 'testLamp',
          moment,
          words: `Hold the lamp to ${pairWords(pair)}.`,
          place: pairWords(pair),
          cost: 1.5,
          outcomes,
          shares: (settled) => bandShares(settled.held('test lamp', pair), edges)
        }))
};
