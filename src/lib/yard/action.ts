import * as v from 'valibot';
import { EditSchema } from './edits';
import { fit, KnobSchema, SceneSchema, SwitchSchema, type Scene } from './scene';
import type { Yard } from './yard';

/** What hands do to a scene: throw toggles, turn the knob, change wires (the list replaces the old one). */
export const ActionSchema = v.pipe(
  v.strictObject({
    switch: v.optional(v.record(v.string(), SwitchSchema)),
    controller: v.optional(KnobSchema),
    edits: v.optional(v.array(EditSchema, 'a list of edits'))
  }),
  v.check((action) => Object.keys(action).length > 0, 'at least one of switch, controller, edits')
);
export type Action = Readonly<v.InferOutput<typeof ActionSchema>>;

/** The scene after the action; throws BorderError when the yard has no such toggle. */
export const act = (yard: Yard, scene: Scene, action: Action): Scene =>
  fit('action', yard, {
    ...scene,
    controller: action.controller ?? scene.controller,
    switches: { ...scene.switches, ...action.switch },
    edits: action.edits ?? scene.edits
  });

/** Words, a whole scene, and what to light: lessons, walkthroughs and workshops are made of these. */
export const StepSchema = v.strictObject({
  words: v.string(),
  scene: SceneSchema,
  /** Names of places to light, three at most. */
  light: v.optional(v.pipe(v.array(v.string()), v.maxLength(3, 'three places at most')), [])
});
export type Step = Readonly<v.InferOutput<typeof StepSchema>>;
