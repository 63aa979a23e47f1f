import { fileName, fileText } from '../../share';
import { download } from '../download';
import type { Bench } from './bench.svelte';
import { fileOf } from './shelf.svelte';

/** Hands the yard on the bench over as a file. */
export const saveFile = (bench: Bench): void =>
  download(fileName(bench.yard.name, 'yard.json'), 'application/json', fileText(fileOf(bench)));
