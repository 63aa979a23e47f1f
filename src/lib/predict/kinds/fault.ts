import * as v from 'valibot';
import { lampOn, FaultsSchema, PairSchema } from './lampOn';
import { questionKind } from './kind';

const id = 'the fault';
const litAllowed = 'dark, dim or bright';

/** Which of these faults would show all that the test lamp showed? */
export const fault = questionKind({
  key: 'fault',
  schema: v.strictObject({
    of: FaultsSchema,
    /** What was measured: where the lamp was held, and how it looked. */
    tests: v.pipe(
      v.array(
        v.strictObject({
          lamp: PairSchema,
          shows: v.picklist(['dark', 'dim', 'bright'], litAllowed)
        }),
        'one to four tests'
      ),
      v.minLength(1, 'one to four tests'),
      v.maxLength(4, 'one to four tests')
    )
  }),
  asked: ({ of }) => [{ id, options: Object.keys(of) }],
  answer({ of, tests }, played) {
    const odd = tests.find(
      ({ lamp, shows }) => lampOn(played, played.after.faults, lamp) !== shows
    );
    if (odd) return { [id]: `no ${odd.shows} lamp at ${odd.lamp.join(' and ')}` };
    const fitting = Object.entries(of).filter(([, one]) =>
      tests.every(({ lamp, shows }) => lampOn(played, [one], lamp) === shows)
    );
    return { [id]: fitting.map(([name]) => name).join(' and ') || 'none of them' };
  },
  names: () => [],
  hides: () => []
});
