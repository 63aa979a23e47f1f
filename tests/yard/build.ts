import type { InferInput } from 'valibot';
import {
  admit,
  fit,
  read,
  SceneSchema,
  YardSchema,
  type Reading,
  type Scene,
  type Yard,
  type YardInput
} from '../../src/lib/yard';

/** A scene as a lesson writes it: what is left out has its default. */
export type SceneInput = InferInput<typeof SceneSchema>;

/** A yard with its scene. */
export interface Moment {
  readonly yard: Yard;
  readonly scene: Scene;
}

export const yardOf = (input: YardInput = {}): Yard => admit('yard', YardSchema, input);

/** A scene let in through its border and fitted to the yard. */
export const sceneOf = (yard: Yard, input: SceneInput = {}): Scene =>
  fit('scene', yard, admit('scene', SceneSchema, input));

/** Both at once. */
export function moment(yardInput: YardInput, sceneInput: SceneInput = {}): Moment {
  const yard = yardOf(yardInput);
  return { yard, scene: sceneOf(yard, sceneInput) };
}

/** What the engine says of a yard and scene. */
export function reading(yardInput: YardInput, sceneInput: SceneInput = {}): Reading {
  const { yard, scene } = moment(yardInput, sceneInput);
  return read(yard, scene);
}

/** What a call throws; undefined when it throws nothing. */
export function thrown(call: () => unknown): unknown {
  try {
    call();
    return undefined;
  } catch (error) {
    return error;
  }
}
