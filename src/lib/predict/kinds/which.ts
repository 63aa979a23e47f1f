import * as v from 'valibot';
import { way } from '../../motion';
import { ActionSchema } from '../../yard';
import { questionKind } from './kind';

const idOf = ({ loco }: { readonly loco: string }): string => loco || 'controller';

/** Which of these would make the loco run, or stop it? */
export const which = questionKind({
  key: 'which',
  schema: v.strictObject({
    /** The loco it would run or stop; none where the controller's limit is meant. */
    loco: v.optional(v.string('the name of a loco'), ''),
    would: v.picklist(['run', 'stop', 'limit'], 'run, stop or limit'),
    of: v.pipe(
      v.record(v.string(), ActionSchema, 'two or three actions, each with a name'),
      v.check((of) => [2, 3].includes(Object.keys(of).length), 'two or three actions')
    ),
    /** Words for "each of them" and "none of them"; false where each of them is not offered. */
    each: v.optional(v.union([v.string(), v.literal(false)], 'words, or false'), 'each of them'),
    none: v.optional(v.string(), 'none of them')
  }),
  asked: (spec) => [
    {
      id: idOf(spec),
      options: [...Object.keys(spec.of), ...(spec.each === false ? [] : [spec.each]), spec.none]
    }
  ],
  answer(spec, { play }) {
    const names = Object.entries(spec.of)
      .filter(([, action]) => {
        const played = play(action);
        if (spec.would === 'limit') return played.reading.limiting;
        return (way(played, spec.loco) === 'stays') === (spec.would === 'stop');
      })
      .map(([name]) => name);
    const all = names.length === Object.keys(spec.of).length && spec.each;
    const answer = names.length === 0 ? spec.none : all || names.join(' and ');
    return { [idOf(spec)]: answer };
  },
  names: (spec) => (spec.loco ? [spec.loco] : []),
  hides: (spec) => (spec.loco ? [spec.loco] : [])
});
