import * as v from 'valibot';
import { questionKind } from './kind';

const words = { acts: 'it limits', rests: 'it goes on as before' } as const;

/** Does the controller's limit act? */
export const limit = questionKind({
  key: 'limit',
  schema: v.literal('controller', 'controller'),
  asked: () => [{ id: 'controller', options: Object.values(words) }],
  answer: (_, { reading }) => ({ controller: reading.limiting ? words.acts : words.rests }),
  names: () => [],
  hides: () => []
});
