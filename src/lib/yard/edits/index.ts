import * as v from 'valibot';
import { places, TwiceError, type Run } from '../runs';
import type { EditKind } from './kind';
import { metal } from './metal';
import { meter } from './meter';
import { move } from './move';
import { off } from './off';
import { ohms } from './ohms';
import { resistor } from './resistor';
import { testLamp } from './testLamp';
import { toggle } from './toggle';
import { volts } from './volts';

/** Every kind of wire edit; a new one is one file and one name here. */
export const editKinds = [
  off,
  move,
  resistor,
  toggle,
  metal,
  meter,
  volts,
  ohms,
  testLamp
] as const;

/** An edit as lessons, files and links write it: the first key tells the kind. */
export const EditSchema = v.union(
  [
    off.schema,
    move.schema,
    resistor.schema,
    toggle.schema,
    metal.schema,
    meter.schema,
    volts.schema,
    ohms.schema,
    testLamp.schema
  ],
  'an edit: ' + editKinds.map((kind) => JSON.stringify(kind.example)).join(' or ')
);
export type Edit = Readonly<v.InferOutput<typeof EditSchema>>;

const kindOf = (edit: Edit): EditKind =>
  editKinds.find((kind) => kind.key in edit) as unknown as EditKind;

/** Whether an edit only holds a test instrument to the wiring; it is made after all others. */
export const isHeld = (edit: Edit): boolean =>
  'volts' in edit || 'ohms' in edit || 'testLamp' in edit;

/** The runs after one edit; throws PlaceError when it names a place that is not there, or is there already. */
export function applyEdit(runs: readonly Run[], edit: Edit): readonly Run[] {
  const after = kindOf(edit).apply(runs, edit);
  const names = places(after);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined) throw new TwiceError(twice);
  return after;
}

/** What the edit is, in words: "the return dropper A is off". */
export const editWords = (edit: Edit): string => kindOf(edit).words(edit);
