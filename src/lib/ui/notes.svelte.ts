import {
  begunAnew,
  changeNotes,
  putBack,
  readNotes,
  withPrinted,
  withReading,
  withTick,
  type Notes,
  type Printed,
  type Stored
} from '../share';
import type { Shelf } from './builder/shelf.svelte';
import { pageDevice } from './device';

/** What is noted beside the yard on the bench, kept on this device as it is typed. */
export class BenchBook {
  readonly #device = pageDevice();
  readonly #shelf: Shelf;
  notes = $state.raw<Notes>();
  /** What the store has to say. */
  words = $state('');

  constructor(shelf: Shelf) {
    this.#shelf = shelf;
  }

  /** Reads what was noted, and again whenever another tab has noted something. */
  wake(): () => void {
    const look = () => {
      const id = this.#shelf.here?.id;
      if (id !== undefined) this.#took(readNotes(this.#device, id));
    };
    look();
    addEventListener('storage', look);
    return () => removeEventListener('storage', look);
  }

  type = (key: string, text: string, by: string): void =>
    this.#change((notes) => withReading(notes, key, text, by));

  tick = (key: string, on: boolean): void => this.#change((notes) => withTick(notes, key, on));

  beginAnew = (): void => this.#change(begunAnew);

  putBack = (): void => this.#change(putBack);

  print = (printed: Printed): void => this.#change((notes) => withPrinted(notes, printed));

  /** Any other change of what lies beside the yard. */
  note = (change: (notes: Notes) => Notes): void => this.#change(change);

  /** A yard that is not kept yet is kept first: notes lie beside it. */
  #change(change: (notes: Notes) => Notes): void {
    if (!this.#shelf.here) this.#shelf.save();
    const id = this.#shelf.here?.id;
    if (id === undefined) this.words = this.#shelf.words;
    else this.#took(changeNotes(this.#device, id, change));
  }

  #took(result: Stored<Notes>): void {
    if ('ok' in result) this.notes = result.ok;
    this.words = 'wrong' in result ? result.wrong : '';
  }
}
