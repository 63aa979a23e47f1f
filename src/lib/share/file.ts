import * as v from 'valibot';
import { admit, fitWhole, SceneSchema, YardSchema, type Scene, type Yard } from '../yard';
import { ordered, pruned } from './canonical';
import { MAX_NAME } from './limits';
import { VERSION } from './versions';

/** The name of the form: it tells our files from others. */
export const FORMAT = 'ohmyard';

const nameAllowed = `a name of at most ${MAX_NAME} characters`;

/** A yard as it is passed on. What is left out has its default. */
export const FileSchema = v.strictObject({
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
  /** What it is kept under; the yard's own name where none is given. */
  name: v.optional(v.pipe(v.string(nameAllowed), v.maxLength(MAX_NAME, nameAllowed))),
  yard: YardSchema,
  /** A moment of it. */
  scene: v.optional(SceneSchema)
});

/** A yard with its name, and a moment of it or none: complete, in one order of keys. */
export interface YardFile {
  readonly format: typeof FORMAT;
  readonly version: typeof VERSION;
  readonly name: string;
  readonly yard: Yard;
  readonly scene?: Scene;
}

/**
 * Lets a file of the newest version in, defaults filled in.
 * @throws BorderError naming each place that does not fit.
 */
export function admitFile(value: unknown): YardFile {
  const { scene, ...file } = admit('file', FileSchema, value);
  return ordered({
    ...file,
    name: file.name ?? file.yard.name,
    ...(scene && { scene: fitWhole(file.yard, scene) })
  }) as YardFile;
}

/** What is passed on. */
export interface Parcel {
  readonly yard: Yard;
  readonly name?: string;
  readonly scene?: Scene;
}

/**
 * The file of a yard.
 * @throws BorderError when the yard, the name or the scene does not fit.
 */
export const yardFile = (parcel: Parcel): YardFile =>
  admitFile({ format: FORMAT, version: VERSION, ...parcel });

/** What a value means to its border, as text; undefined when it is refused there. */
const meaning = (border: (value: unknown) => unknown) => (value: unknown) => {
  try {
    return JSON.stringify(ordered(border(value)));
  } catch {
    return undefined;
  }
};

const asYard = meaning((value) => admit('yard', YardSchema, value));
const asScene = meaning((value) => admit('scene', SceneSchema, value));

/** The file with only what differs from the schemas' defaults: the same yard gives the same bytes. */
const least = ({ format, version, name, yard, scene }: YardFile) => ({
  format,
  version,
  ...(name !== yard.name && { name }),
  yard: pruned(yard, asYard),
  ...(scene && { scene: pruned(scene, asScene) })
});

/** The file as text, without a blank: for links, pictures and the store. */
export const compactText = (file: YardFile): string => JSON.stringify(least(file));

/** The same text in printable ASCII alone: it survives any encoding of what carries it. */
export const asciiText = (file: YardFile): string =>
  compactText(file).replace(
    /[^ -~]/g,
    (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`
  );

/** The text of a `.yard.json` file, to be read by people too. */
export const fileText = (file: YardFile): string => `${JSON.stringify(least(file), null, 2)}\n`;

/** The file under another name; the yard takes it too, so that a yard has one name. */
export const named = (file: YardFile, name: string): YardFile =>
  admitFile({ ...file, name, yard: { ...file.yard, name } });
