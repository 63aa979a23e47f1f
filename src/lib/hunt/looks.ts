import type { Fault } from '../yard';
import type { Board } from './board';
import type { Told } from './hunt';

/** Tests that need no instrument. */
export const plain: readonly string[] = ['run', 'panelLamp', 'stray', 'pin drawn', 'across'];

/** A reading of a test that needs no instrument, and whether a sound yard would not give it. */
export interface Look extends Told {
  readonly isOdd: boolean;
  readonly roads: readonly string[];
}

/** What every look shows of a yard with these faults. */
export const looksAt = ({ stands }: Board, faults: readonly Fault[]): readonly Look[] =>
  stands.flatMap((stand) => {
    const some = stand.tests.filter(({ kind }) => plain.includes(kind));
    if (some.length === 0) return [];
    const [now, sound] = [stand.with(faults), stand.of(0)];
    return some.map((test): Look => {
      const [shares, before] = [stand.sharesOf(test, now), stand.sharesOf(test, sound)];
      return {
        test: test.id,
        outcome: test.outcomes[shares.indexOf(Math.max(...shares))]?.id ?? '',
        isOdd: shares.join() !== before.join(),
        roads: test.moment.roads
      };
    });
  });
