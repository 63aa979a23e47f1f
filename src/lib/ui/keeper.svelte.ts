import type { KeptAs, Removed, storeOf, Stored } from '../share';
import { pageDevice } from './device';
import { keep, readKept } from './store';

/** Where something is made that the device keeps. */
export interface Desk<F> {
  /** What lies on it; undefined for nothing yet. */
  readonly file: () => F | undefined;
  /** Begins anew with this; with nothing where there is none. */
  readonly begin: (file: F | undefined) => void;
}

interface Places<F> {
  readonly store: ReturnType<typeof storeOf<F>>;
  /** The key under which this device remembers what was open last. */
  readonly last: string;
  readonly desk: Desk<F>;
}

/** What this device keeps of one kind, and which of it is on the desk. */
export class Keeper<F> {
  readonly #store: Places<F>['store'];
  readonly #last: string;
  readonly #desk: Desk<F>;
  readonly #device = pageDevice();
  all = $state.raw<readonly KeptAs<F>[]>([]);
  here = $state.raw<KeptAs<F>>();
  /** What the store has to say. */
  words = $state('');
  /** What another tab kept meanwhile: this one's changes wait for a choice. */
  theirs = $state.raw<KeptAs<F>>();
  removed = $state.raw<Removed>();

  constructor({ store, last, desk }: Places<F>) {
    this.#store = store;
    this.#last = last;
    this.#desk = desk;
  }

  /** Opens what was on the desk last, or the first one. */
  wake(): void {
    this.#list();
    const last = readKept(this.#last);
    const kept = this.all.find(({ id }) => id === last) ?? this.all[0];
    if (kept) this.open(kept);
  }

  /** Keeps what is on the desk; what is not kept yet becomes a new one. */
  save(): void {
    const file = this.#desk.file();
    if (this.theirs || file === undefined) return;
    const result = this.here
      ? this.#store.keepAgain(this.#device, this.here, file)
      : this.#store.keepNew(this.#device, file);
    this.#took(result);
  }

  open(kept: KeptAs<F>): void {
    this.#leave();
    const read = this.#ok(this.#store.readKept(this.#device, kept.id));
    if (!read) return;
    this.here = read;
    keep(this.#last, read.id);
    this.#desk.begin(read.file);
  }

  /** What comes from outside, or begins, becomes a new one; nothing that is kept changes. */
  take(file: F | undefined): void {
    this.#leave();
    this.here = undefined;
    this.#desk.begin(file);
    this.save();
  }

  duplicate(): void {
    this.#leave();
    if (!this.here) return;
    const copy = this.#ok(this.#store.duplicateKept(this.#device, this.here.id));
    this.#list();
    if (copy) this.open(copy);
  }

  remove(): void {
    if (!this.here) return;
    const removed = this.#ok(this.#store.removeKept(this.#device, this.here));
    if (!removed) return;
    this.removed = removed;
    this.here = undefined;
    this.theirs = undefined;
    this.#list();
    const [next] = this.all;
    if (next) this.open(next);
    else this.#desk.begin(undefined);
  }

  restore(): void {
    if (!this.removed) return;
    const kept = this.#ok(this.#store.restoreKept(this.#device, this.removed));
    this.removed = undefined;
    this.#list();
    if (kept) this.open(kept);
  }

  /** In a conflict: what this tab has becomes another one beside theirs. */
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

  /** Before something else comes: changes that wait for a choice are kept by themselves. */
  #leave(): void {
    if (this.theirs) this.keepBoth();
  }

  #took(result: Stored<KeptAs<F>, KeptAs<F>>): void {
    if ('wrong' in result) {
      this.theirs = result.theirs;
      this.words = result.wrong;
      if (result.why === 'gone') this.here = undefined;
      return;
    }
    this.words = '';
    this.here = result.ok;
    keep(this.#last, result.ok.id);
    this.#list();
  }

  #list(): void {
    const shelf = this.#ok(this.#store.listKept(this.#device));
    if (!shelf) return;
    this.all = shelf.all;
    if (shelf.words) this.words = shelf.words;
  }

  #ok<T>(result: Stored<T, KeptAs<F>>): T | undefined {
    if ('ok' in result) return result.ok;
    this.words = result.wrong;
    return undefined;
  }
}
