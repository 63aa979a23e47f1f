import { strToU8, zipSync } from 'fflate';

/** Files by name as one ZIP archive. Source of the form: APPNOTE, by the library. */
export const zipOf = (files: Readonly<Record<string, string>>): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));
