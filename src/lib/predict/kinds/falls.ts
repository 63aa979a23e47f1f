import * as v from 'valibot';
import { way } from '../../motion';
import { vehicles } from '../../yard';
import { questionKind } from './kind';

const words = { stays: 'does not move', rails: 'stays on the rails', falls: 'falls in' } as const;

/** Does each of these, loco or other stock, move, and does it fall into the gap? */
export const falls = questionKind({
  key: 'falls',
  schema: v.strictObject({
    of: v.pipe(
      v.array(v.string('the name of a loco or other stock'), 'a list of locos or other stock'),
      v.minLength(1, 'one to three of them'),
      v.maxLength(3, 'one to three of them')
    )
  }),
  asked: ({ of }) => of.map((id) => ({ id, options: Object.values(words) })),
  answer: ({ of }, played) =>
    Object.fromEntries(
      of.map((name) => {
        if (vehicles(played.after)[name]?.fallen) return [name, words.falls];
        return [name, way(played, name) === 'stays' ? words.stays : words.rails];
      })
    ),
  names: ({ of }) => of,
  hides: ({ of }) => of
});
