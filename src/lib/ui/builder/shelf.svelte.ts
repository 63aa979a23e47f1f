import {
  duplicateKept,
  fileText,
  keepAgain,
  keepNew,
  listKept,
  readKept,
  removeKept,
  restoreKept,
  yardFile,
  type Kept,
  type Removed,
  type Stored,
  type YardFile
} from '../../share';
import { keep, readKept as readText } from '../store';
import { pageDevice } from '../device';
import { firstDesign, type Bench } from './bench.svelte';
import { sceneOf, type Design, type Draft } from './draft';

/** The key under which this device remembers which yard was open last. */
const LAST = 'ohmyard.lastYard';

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
export class Shelf {
  readonly #bench: Bench;
  readonly #device = pageDevice();
  yards = $state.raw<readonly Kept[]>([]);
  here = $state.raw<Kept>();
  /** What the store has to say. */
  words = $state('');
  /** What another tab kept meanwhile: this one's changes wait for a choice. */
  theirs = $state.raw<Kept>();
  removed = $state.raw<Removed>();

  constructor(bench: Bench) {
    this.#bench = bench;
    bench.onchange = () => this.save();
  }

  /** Opens the yard that was on the bench last, or the first one. */
  wake(): void {
    this.#list();
    const last = readText(LAST);
    const kept = this.yards.find(({ id }) => id === last) ?? this.yards[0];
    if (kept) this.open(kept);
  }

  /** Keeps what is on the bench; a yard that is not kept yet becomes one. */
  save(): void {
    if (this.theirs) return;
    const file = fileOf(this.#bench);
    const result = this.here
      ? keepAgain(this.#device, this.here, file)
      : keepNew(this.#device, file);
    this.#took(result);
  }

  open(kept: Kept): void {
    this.#leave();
    const read = this.#ok(readKept(this.#device, kept.id));
    if (!read) return;
    this.here = read;
    keep(LAST, read.id);
    this.#bench.begin(designOf(read.file));
  }

  /** A yard from outside becomes a new one; nothing that is kept changes. */
  take(file: YardFile): void {
    this.#leave();
    this.here = undefined;
    this.#bench.begin(designOf(file));
    this.save();
  }

  fresh(): void {
    this.#leave();
    this.here = undefined;
    this.#bench.begin(firstDesign);
    this.save();
  }

  duplicate(): void {
    this.#leave();
    if (!this.here) return;
    const copy = this.#ok(duplicateKept(this.#device, this.here.id));
    this.#list();
    if (copy) this.open(copy);
  }

  remove(): void {
    if (!this.here) return;
    const removed = this.#ok(removeKept(this.#device, this.here));
    if (!removed) return;
    this.removed = removed;
    this.here = undefined;
    this.theirs = undefined;
    this.#list();
    const [next] = this.yards;
    if (next) this.open(next);
    else this.#bench.begin(firstDesign);
  }

  restore(): void {
    if (!this.removed) return;
    const kept = this.#ok(restoreKept(this.#device, this.removed));
    this.removed = undefined;
    this.#list();
    if (kept) this.open(kept);
  }

  /** In a conflict: this tab's yard becomes another one beside theirs. */
  keepBoth(): void {
    this.theirs = undefined;
    this.here = undefined;
    this.save();
  }

  takeTheirs(): void {
    const { theirs } = this;
    this.theirs = undefined;
    if (theirs) this.open(theirs);
  }

  /** Before another yard comes: changes that wait for a choice are kept as a yard of their own. */
  #leave(): void {
    if (this.theirs) this.keepBoth();
  }

  #took(result: Stored<Kept>): void {
    if ('wrong' in result) {
      this.theirs = result.theirs;
      this.words = result.wrong;
      if (result.why === 'gone') this.here = undefined;
      return;
    }
    this.words = '';
    this.here = result.ok;
    keep(LAST, result.ok.id);
    this.#list();
  }

  #list(): void {
    const shelf = this.#ok(listKept(this.#device));
    if (!shelf) return;
    this.yards = shelf.all;
    if (shelf.words) this.words = shelf.words;
  }

  #ok<T>(result: Stored<T>): T | undefined {
    if ('ok' in result) return result.ok;
    this.words = result.wrong;
    return undefined;
  }
}
