import { changesSince, printedWires, type Changes } from '../../book';
import type { Printed } from '../../share';
import type { Yard } from '../../yard';
import { isoDay, today } from '../day';
import type { Bench } from '../builder/bench.svelte';
import type { BenchBook } from '../notes.svelte';

const none: Changes = { changes: [], renumbered: [] };

/** A yard without its name: a new name makes no print-out old. */
const yardText = ({ name, ...yard }: Yard): string => {
  void name;
  return JSON.stringify(yard);
};

/** Which revision of the book the yard is at, and what has changed since the last print-out. */
export class Revision {
  readonly #bench: Bench;
  readonly #book: BenchBook;
  readonly printed: Printed | undefined = $derived.by(() => this.#book.notes?.printed);
  readonly state: 'never' | 'same' | 'changed' = $derived.by(() => {
    if (!this.printed) return 'never';
    return this.printed.yard === yardText(this.#bench.yard) ? 'same' : 'changed';
  });
  /** The revision that the book has now: one more than that which was printed, once the yard has changed. */
  readonly number: number = $derived(
    (this.printed?.revision ?? 0) + (this.state === 'same' ? 0 : 1)
  );
  readonly changes: Changes = $derived.by(() =>
    this.printed && this.state === 'changed'
      ? changesSince(this.printed.wires, printedWires(this.#bench.yard))
      : none
  );
  readonly moved: boolean = $derived(
    this.changes.changes.length + this.changes.renumbered.length > 0
  );
  readonly words: string = $derived.by(() => this.#book.words);

  constructor(bench: Bench, book: BenchBook) {
    this.#bench = bench;
    this.#book = book;
  }

  /** The book as it stands is the one that was printed. */
  mark(): void {
    this.#book.print({
      revision: this.number,
      day: isoDay(today()),
      yard: yardText(this.#bench.yard),
      wires: [...printedWires(this.#bench.yard)]
    });
  }
}
