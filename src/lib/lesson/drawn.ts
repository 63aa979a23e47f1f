import * as v from 'valibot';
import { roads, type Yard } from '../yard';

/** How the rows are drawn where not as usual: the wires of the yard stay what they are. */
export const DrawnSchema = v.strictObject({
  /** The feed comes down in the east, the return goes up in the west. */
  mirrored: v.optional(v.boolean('true or false'), false),
  /** The roads from the top row to the lowest one. */
  order: v.optional(v.array(v.string('the letter of a road')), [])
});
export type Redrawn = Readonly<v.InferOutput<typeof DrawnSchema>>;

/** Rows drawn as usual. */
export const asUsual: Redrawn = { mirrored: false, order: [] };

/** What is wrong with an order of rows in this yard, and what is allowed; nothing when it fits. */
export function misfit(
  yard: Yard,
  { order }: Redrawn
): { readonly met: string; readonly allowed: string } | undefined {
  if (order.length === 0) return undefined;
  const names = roads(yard);
  const met = `\`order\` of rows '${order.join(', ')}'`;
  if (yard.plug) return { met, allowed: 'no order where the deck moves' };
  const fits = order.length === names.length && names.every((name) => order.includes(name));
  return fits ? undefined : { met, allowed: `each of ${names.join(', ')} once` };
}
