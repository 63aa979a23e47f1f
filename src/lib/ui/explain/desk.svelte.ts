import { changed, historyOf, redone, settled, undone, type History } from '../../share';
import { MAX_STEPS, type Walkthrough, type WalkStep } from '../../walk';
import { fit, type Scene, type Yard } from '../../yard';

/** A step to begin with: the yard as it stands with all off. */
export const emptyStep = (yard: Yard): WalkStep => ({
  heading: '',
  words: '',
  scene: fit('scene', yard, {
    version: 1,
    controller: 0,
    second: 0,
    supply: 'on',
    switches: {},
    selector: 'off',
    deck: 0,
    plug: 'in',
    locos: {},
    stock: {},
    edits: [],
    faults: []
  }),
  lit: [],
  show: ['rows']
});

/** A walkthrough being composed: its steps, which of them is chosen, and what can be taken back. */
export class WalkDesk {
  #history = $state.raw<History<Walkthrough>>();
  #at = $state(0);
  /** Called whenever the walkthrough has changed. */
  onchange: () => void = () => undefined;

  readonly walk: Walkthrough | undefined = $derived(this.#history?.now);
  readonly steps: readonly WalkStep[] = $derived(this.walk?.steps ?? []);
  /** The chosen step, from 0. */
  readonly at: number = $derived(Math.min(this.#at, this.steps.length - 1));
  readonly step: WalkStep | undefined = $derived(this.steps[this.at]);
  readonly canUndo: boolean = $derived((this.#history?.past.length ?? 0) > 0);
  readonly canRedo: boolean = $derived((this.#history?.future.length ?? 0) > 0);
  readonly isFull: boolean = $derived(this.steps.length >= MAX_STEPS);

  /** Begins with another walkthrough, or with none; its past is gone with it. */
  begin(walk: Walkthrough | undefined): void {
    this.#history = walk && historyOf(walk);
    this.#at = 0;
  }

  choose(index: number): void {
    this.settle();
    this.#at = index;
  }

  retitle(title: string): void {
    if (this.walk) this.#put({ ...this.walk, title }, 'title');
  }

  /** Changes the chosen step; changes under one `key` are one step back. */
  change(change: Partial<WalkStep>, key?: string): void {
    if (!this.step) return;
    const next = { ...this.step, ...change };
    this.#putSteps(this.steps.with(this.at, next), key && `${this.at} ${key}`);
  }

  /** Takes the call of the chosen step away. */
  uncall(): void {
    if (!this.step) return;
    const { call: _, ...rest } = this.step;
    void _;
    this.#putSteps(this.steps.with(this.at, rest));
  }

  /** Puts a step after the chosen one, and chooses it. */
  add(step: WalkStep): void {
    if (this.isFull) return;
    this.#putSteps(this.steps.toSpliced(this.at + 1, 0, step));
    this.#at = this.at + 1;
  }

  /** Adds a step of the chosen one's scene and views. */
  addAlike(scene: Scene): void {
    if (this.walk)
      this.add({ ...emptyStep(this.walk.yard), scene, show: this.step?.show ?? ['rows'] });
  }

  duplicate(): void {
    if (this.step) this.add(this.step);
  }

  /** Deletes the chosen step; the last one stays. */
  remove(): void {
    if (this.steps.length > 1) this.#putSteps(this.steps.toSpliced(this.at, 1));
  }

  /** Moves the chosen step by one place, up (−1) or down (1). */
  move(by: -1 | 1): void {
    const to = this.at + by;
    if (!this.step || to < 0 || to >= this.steps.length) return;
    this.#putSteps(this.steps.toSpliced(this.at, 1).toSpliced(to, 0, this.step));
    this.#at = to;
  }

  /** A field is left: what comes next can be taken back by itself. */
  settle(): void {
    if (this.#history) this.#history = settled(this.#history);
  }

  undo(): void {
    if (this.#history) this.#go(undone(this.#history));
  }

  redo(): void {
    if (this.#history) this.#go(redone(this.#history));
  }

  #putSteps(steps: readonly WalkStep[], key?: string): void {
    if (this.walk) this.#put({ ...this.walk, steps }, key);
  }

  #put(walk: Walkthrough, key?: string): void {
    if (this.#history) this.#go(changed(this.#history, walk, key === undefined ? {} : { key }));
  }

  #go(history: History<Walkthrough>): void {
    this.#history = history;
    this.onchange();
  }
}
