import * as v from 'valibot';
import { findPart } from '../runs';
import { editKind } from './kind';

/** Resistance of a tool laid on two studs, Ω. Source: common practice. */
const TOUCH_OHMS = 0.05;

/** Metal laid across a part, from one stud to the other. */
export const metal = editKind({
  key: 'metal',
  schema: v.strictObject({ metal: v.string('the name of a switch or wire') }),
  apply(runs, edit) {
    const part = findPart(runs, edit.metal);
    const id = `metal on ${edit.metal}`;
    const host = runs.find((run) => run.parts.some((each) => each.id === edit.metal));
    return [
      ...runs,
      {
        id,
        from: part.from,
        to: part.to,
        job: host?.job ?? 'feed',
        parts: [{ id, kind: 'metal', ohms: TOUCH_OHMS, closed: true }]
      }
    ];
  },
  words: (edit) => `metal lies across ${edit.metal}`,
  example: { metal: 'toggle A' }
});
