import * as v from 'valibot';
import { questionKind } from './kind';

const states = ['dark', 'dim', 'bright'] as const;

/** How does the test lamp look? */
export const testLamp = questionKind({
  key: 'testLamp',
  schema: v.strictObject({
    options: v.optional(
      v.pipe(
        v.array(v.picklist(states, 'dark, dim or bright'), 'dark, dim or bright'),
        v.minLength(2, 'at least two of dark, dim, bright')
      ),
      [...states]
    )
  }),
  asked: ({ options }) => [{ id: 'test lamp', options }],
  answer: (_, { reading }) => ({ 'test lamp': reading.testLamp ?? 'dark' }),
  names: () => ['test lamp'],
  hides: () => ['test lamp']
});
