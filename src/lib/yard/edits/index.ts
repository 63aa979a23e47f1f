import * as v from 'valibot';
import { places, TwiceError, type Run } from '../runs';
import type { EditKind } from './kind';
import { metal } from './metal';
import { meter } from './meter';
import { move } from './move';
import { off } from './off';
import { resistor } from './resistor';
import { toggle } from './toggle';

/** Every kind of wire edit; a new one is one file and one name here. */
export const editKinds = [off, move, resistor, toggle, metal, meter] as const;

/** An edit as lessons, files and links write it: the first key tells the kind. */
export const EditSchema = v.union(
  [off.schema, move.schema, resistor.schema, toggle.schema, metal.schema, meter.schema],
  'an edit: ' + editKinds.map((kind) => JSON.stringify(kind.example)).join(' or ')
);
export type Edit = Readonly<v.InferOutput<typeof EditSchema>>;

const kindOf = (edit: Edit): EditKind =>
  editKinds.find((kind) => kind.key in edit) as unknown as EditKind;

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
