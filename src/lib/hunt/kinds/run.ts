import { locoNamed, startingVolts } from '../../yard';
import { surely, type Outcome, type Test, type TestKind } from './kind';
import type { Moment } from '../moment';
import type { Settled } from '../settle';

const outcomes: readonly Outcome[] = [
  { id: 'runs', words: 'it runs as it should' },
  { id: 'slow', words: 'it runs slowly' },
  { id: 'still', words: 'it does not move' },
  { id: 'wrong way', words: 'it runs the wrong way' },
  { id: 'limit', words: 'the controller is at its limit' }
];

/** Share of the volts at full knob below which a loco is seen to be slow. Source: common practice. */
const SLOW_SHARE = 0.85;

function seen(settled: Settled, road: string, full: number): string {
  if (settled.limiting()) return 'limit';
  const volts = settled.locoVolts(road);
  if (Math.abs(volts) < startingVolts(locoNamed('Plover'))) return 'still';
  if (volts < 0) return 'wrong way';
  return volts < SLOW_SHARE * full ? 'slow' : 'runs';
}

const placeOf = ({ id }: Moment, road: string): string => {
  const [, stop = road] = /^own .+ at (.+)$/.exec(id) ?? [];
  return stop === road ? `road ${road}` : `road ${road} with the deck at ${stop}`;
};

/** A loco on a road that is fed as it should be: does it run? */
export const run: TestKind = {
  key: 'run',
  make: (yard, moment) =>
    moment.kind !== 'own' && (moment.kind !== 'off' || moment.pairs.length === 0)
      ? []
      : moment.roads.map((road): Test => ({
          id: `run ${road}, ${moment.id}`,
          kind: 'run',
          moment,
          words: `Put a loco on road ${road}: does it run?`,
          place: placeOf(moment, road),
          cost: 1,
          outcomes,
          shares(settled) {
            const now = seen(settled, road, yard.supply.volts);
            return surely(
              outcomes.findIndex(({ id }) => id === now),
              outcomes.length
            );
          }
        }))
};
