import * as v from 'valibot';
import { way } from '../../motion';
import { questionKind } from './kind';

const options = ['stays', 'west', 'east'] as const;

/** What does each of these locos do: stays, west or east? */
export const about = questionKind({
  key: 'about',
  schema: v.pipe(
    v.array(v.string('the name of a loco'), 'a list of locos'),
    v.minLength(1, 'one to three locos'),
    v.maxLength(3, 'one to three locos')
  ),
  asked: (locos) => locos.map((id) => ({ id, options })),
  answer: (locos, played) => Object.fromEntries(locos.map((name) => [name, way(played, name)])),
  names: (locos) => locos,
  hides: (locos) => locos
});
