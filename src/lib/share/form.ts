import type { Plain } from './canonical';
import { UnreadableError } from './wrong';

/** What is passed on here: the name in its files, the mark in its links, and where it is opened. */
export interface Format {
  readonly format: string;
  readonly mark: string;
  readonly noun: string;
  readonly page: string;
}

export const formats = {
  yard: { format: 'ohmyard', mark: 'yard', noun: 'yard', page: 'My yard' },
  walkthrough: {
    format: 'ohmyard-walkthrough',
    mark: 'walk',
    noun: 'walkthrough',
    page: 'Play a walkthrough, under Explain'
  }
} as const satisfies Readonly<Record<string, Format>>;

/** How things of one format are read. */
export interface Form<T> {
  readonly of: Format;
  /** The newest version. */
  readonly version: number;
  /** Most characters of its text, and most bytes that a link may unfold to. */
  readonly maxText: number;
  /** Most values in its text. */
  readonly maxValues: number;
  /**
   * Lets plain data of this format in, of any version.
   * @throws BorderError
   */
  readonly admit: (file: Plain) => T;
}

/** The other format that fits, if one does. */
export const otherThan = (mine: Format, fits: (format: Format) => boolean): Format | undefined =>
  Object.values<Format>(formats).find((each) => each !== mine && fits(each));

/** A thing of ours that is opened on another page. */
export const elsewhere = ({ noun, page }: Format): UnreadableError =>
  new UnreadableError('elsewhere', `This is a ${noun}. Open it on the page ‘${page}’.`);
