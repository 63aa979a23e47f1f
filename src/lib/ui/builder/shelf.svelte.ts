import { fileText, yardFile, yardStore, type YardFile } from '../../share';
import { Keeper } from '../keeper.svelte';
import { firstDesign, type Bench } from './bench.svelte';
import { sceneOf, type Design, type Draft } from './draft';

/** A design as a file. */
export const fileOf = (bench: Bench): YardFile =>
  yardFile({ yard: bench.yard, scene: sceneOf(bench.yard, bench.design) });

/** A file as a design: only what its owner set, so that the rest follows the scale again. */
export function designOf(file: YardFile): Design {
  const { yard } = JSON.parse(fileText(file)) as { readonly yard: Draft };
  const locos = Object.entries(file.scene?.locos ?? {}).map(([name, at]) => [name, at.road]);
  return { yard, locos: Object.fromEntries(locos) };
}

/** The yards of this device, and which of them is on the bench. */
export class Shelf extends Keeper<YardFile> {
  constructor(bench: Bench) {
    super({
      store: yardStore,
      last: 'ohmyard.lastYard',
      desk: {
        file: () => fileOf(bench),
        begin: (file) => bench.begin(file ? designOf(file) : firstDesign)
      }
    });
    bench.onchange = () => this.save();
  }
}
