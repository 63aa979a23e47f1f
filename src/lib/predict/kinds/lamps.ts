import * as v from 'valibot';
import { questionKind } from './kind';

const options = ['lit', 'dim', 'dark'] as const;
const id = (road: string): string => `lamp ${road}`;
const allowed = 'one to three roads with a panel lamp';

/** How does the panel lamp of each of these roads look: lit, dim or dark? */
export const lamps = questionKind({
  key: 'lamps',
  schema: v.pipe(
    v.array(v.pipe(v.union([v.string(), v.number()]), v.transform(String)), allowed),
    v.minLength(1, allowed),
    v.maxLength(3, allowed)
  ),
  asked: (roads) => roads.map((road) => ({ id: id(road), options })),
  answer: (roads, { reading }) =>
    Object.fromEntries(roads.map((road) => [id(road), reading.lamp(road) ?? 'none'])),
  names: (roads) => roads.map(id),
  hides: (roads) => roads.map(id)
});
