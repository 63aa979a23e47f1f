import type { Yard } from '../../yard';
import { changed, historyOf, redone, settled, undone, type History } from '../../share';
import {
  renamedLoco,
  tried,
  withLoco,
  withoutLoco,
  yardOf,
  type Design,
  type Draft
} from './draft';
import type { Field } from './fields';

/** The yard to begin with. */
export const firstDesign: Design = {
  yard: { name: 'My yard', deckRoads: 5, stablingRoads: 4 },
  locos: { Heron: 'A', Plover: '1' }
};

const keyOf = ({ path }: Field): string => path.join('.');

/** What was typed into a field and does not fit. */
interface Wrong {
  readonly field: Field;
  readonly text: string;
  readonly why: string;
}

/** What did not fit may fit now that another value has changed; the rest is left, with why. */
function triedAgain(draft: Draft, wrong: Readonly<Record<string, Wrong>>) {
  const left: Record<string, Wrong> = {};
  for (const [key, { field, text }] of Object.entries(wrong)) {
    const result = tried(draft, field, text);
    if ('ok' in result) draft = result.ok;
    else left[key] = { field, text, why: result.wrong };
  }
  return { draft, left };
}

/** A yard being built: what its owner set, step by step, and what was typed that does not fit. */
export class Bench {
  #history = $state.raw<History<Design>>(historyOf(firstDesign));
  /** Text that does not fit, and why: it stays until it is put right. */
  #wrong = $state.raw<Readonly<Record<string, Wrong>>>({});
  /** Called whenever the draft has changed. */
  onchange: () => void = () => undefined;

  readonly design: Design = $derived(this.#history.now);
  readonly draft: Draft = $derived(this.design.yard);
  readonly yard: Yard = $derived(yardOf(this.draft));
  readonly canUndo: boolean = $derived(this.#history.past.length > 0);
  readonly canRedo: boolean = $derived(this.#history.future.length > 0);

  /** Begins anew with another yard; its past is gone with it. */
  begin(design: Design): void {
    this.#history = historyOf(design);
    this.#wrong = {};
  }

  /** What stands wrong in a field, if anything. */
  wrongIn = (field: Field) => this.#wrong[keyOf(field)];

  /** A field's text changes: kept when it fits, held beside the field when not. */
  type(field: Field, text: string): void {
    const key = keyOf(field);
    const result = tried(this.draft, field, text);
    const { [key]: _, ...others } = this.#wrong;
    void _;
    if ('wrong' in result) {
      this.#wrong = { ...others, [key]: { field, text, why: result.wrong } };
      return;
    }
    const { draft, left } = triedAgain(result.ok, others);
    this.#wrong = left;
    this.put({ ...this.design, yard: draft }, key);
  }

  /** Sets a loco on a road, or takes it away. */
  place(loco: string, road: string | undefined): void {
    const { [loco]: _, ...others } = this.design.locos;
    void _;
    this.put({ ...this.design, locos: road === undefined ? others : { ...others, [loco]: road } });
  }

  /** Takes on a loco of one's own. */
  addLoco(): void {
    this.put(withLoco(this.design));
  }

  removeLoco(name: string): void {
    this.put(withoutLoco(this.design, name));
  }

  /** Renames a loco of one's own; words where it cannot have that name. */
  renameLoco(from: string, to: string): string {
    const renamed = renamedLoco(this.design, from, to.trim());
    if ('wrong' in renamed) return renamed.wrong;
    this.put(renamed.ok);
    return '';
  }

  /** Builds the yard another way. */
  build(change: Partial<Draft>): void {
    this.put({ ...this.design, yard: { ...this.draft, ...change } });
  }

  /** Puts another design; changes under one `key` are one step. */
  put(design: Design, key?: string): void {
    this.#history = changed(this.#history, design, key === undefined ? {} : { key });
    this.onchange();
  }

  /** A field is left: what comes next is a step of its own. */
  settle(): void {
    this.#history = settled(this.#history);
  }

  undo(): void {
    this.#step(undone(this.#history));
  }

  redo(): void {
    this.#step(redone(this.#history));
  }

  #step(history: History<Design>): void {
    this.#history = history;
    this.#wrong = {};
    this.onchange();
  }
}
