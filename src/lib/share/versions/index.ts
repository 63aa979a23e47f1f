import type { Plain } from '../canonical';
import { v1 } from './v1';
import type { Version } from './version';

/** Every version of the file's form, oldest first; a new one is one file and one name here. */
export const versions: readonly Version[] = [v1];

/** The version that is written. */
export const VERSION = 1;

/** A file of any known version in the form of the newest, version by version. */
export const broughtUp = (file: Plain, all: readonly Version[] = versions): Plain =>
  all.reduce(
    (now, { version, toNext }) =>
      toNext && now.version === version ? { ...toNext(now), version: version + 1 } : now,
    file
  );
