import * as v from 'valibot';
import { findPart, type Run } from '../runs';
import { editKind } from './kind';

/** Resistance of a tool laid on two studs, Ω. Source: common practice. */
const TOUCH_OHMS = 0.05;

/** The two nodes that metal joins: the studs of a part, or the rails of a road. */
function ends(runs: readonly Run[], what: string): Pick<Run, 'from' | 'to' | 'job'> {
  const [, road] = /^rails of (.+)$/.exec(what) ?? [];
  if (road !== undefined) {
    findPart(runs, `feed dropper ${road}`);
    return { from: `feed rail ${road}`, to: `return rail ${road}`, job: 'feed' };
  }
  const { from, to } = findPart(runs, what);
  const host = runs.find((run) => run.parts.some((each) => each.id === what));
  return { from, to, job: host?.job ?? 'feed' };
}

/** Metal laid across a part, from one stud to the other, or across the rails of a road. */
export const metal = editKind({
  key: 'metal',
  schema: v.strictObject({ metal: v.string("the name of a switch or wire, or 'rails of A'") }),
  apply(runs, edit) {
    const id = `metal on ${edit.metal}`;
    return [
      ...runs,
      {
        id,
        ...ends(runs, edit.metal),
        parts: [{ id, kind: 'metal', ohms: TOUCH_OHMS, closed: true }]
      }
    ];
  },
  words: (edit) => `metal lies across ${edit.metal}`,
  example: { metal: 'toggle A' }
});
