import * as v from 'valibot';
import { ActionSchema, KnobSchema, SceneSchema } from '../yard';

const name = v.string('the name of a loco');
const driveAllowed = 'east, west, or a knob setting from -1 to 1';

/** When a drive is over: the whole train of a loco on a road, at the end of its rails, against other stock, or after a time. */
const UntilSchema = v.union(
  [
    v.strictObject({
      loco: name,
      on: v.pipe(v.union([v.string(), v.number()]), v.transform(String))
    }),
    v.strictObject({ loco: name, at: v.literal('end') }),
    v.strictObject({ loco: name, meets: v.string('the name of a loco or other stock') }),
    v.strictObject({ seconds: v.pipe(v.number(), v.minValue(0), v.maxValue(120)) })
  ],
  "{ loco, on: road }, { loco, at: 'end' }, { loco, meets: stock } or { seconds: 3 }"
);

const DriveSchema = v.union(
  [
    v.pipe(
      v.picklist(['east', 'west']),
      v.transform((way) => (way === 'east' ? 0.6 : -0.6))
    ),
    KnobSchema
  ],
  driveAllowed
);

/** One action of a working: what hands do, then the knob turned until something is so, then to centre. */
const WorkingStepSchema = v.strictObject({
  words: v.string('what is done, in words'),
  do: v.optional(ActionSchema),
  drive: v.optional(DriveSchema),
  until: v.optional(UntilSchema),
  /** Locos that are meant to move beside the one it waits for. */
  moves: v.optional(v.array(name), [])
});

/** A working: a scene, and what is done from there, step by step. */
export const SequenceSchema = v.strictObject({
  name: v.string(),
  scene: SceneSchema,
  steps: v.array(WorkingStepSchema)
});
/** A sequence as files and presets write it. */
export type SequenceInput = v.InferInput<typeof SequenceSchema>;
export type Sequence = v.InferOutput<typeof SequenceSchema>;
export type WorkingStep = Sequence['steps'][number];
export type Until = NonNullable<WorkingStep['until']>;
