import { hasLamp } from '../settle';
import { surely, type Outcome, type TestKind } from './kind';

const outcomes: readonly Outcome[] = [
  { id: 'lit', words: 'it is lit' },
  { id: 'dark', words: 'it is dark' },
  { id: 'burnt', words: 'it flashes up and burns out' }
];

/** Amps from which an LED is seen lit, and from which it burns. Source: common practice. */
const LIT_AMPS = 2e-3;
const BURNT_AMPS = 60e-3;

/** The panel lamp of a road that is switched on. */
export const panelLamp: TestKind = {
  key: 'panelLamp',
  make: (yard, moment) =>
    moment.kind !== 'own'
      ? []
      : moment.roads
          .filter((road) => hasLamp(yard, road))
          .map((road) => ({
            id: `panel lamp ${road}, ${moment.id}`,
            kind: 'panelLamp',
            moment,
            words: `Look at the panel lamp of road ${road}.`,
            place: `lamp ${road}`,
            cost: 1,
            outcomes,
            shares(settled) {
              const amps = settled.lampAmps(road);
              return surely(amps < LIT_AMPS ? 1 : amps < BURNT_AMPS ? 0 : 2, outcomes.length);
            }
          }))
};
