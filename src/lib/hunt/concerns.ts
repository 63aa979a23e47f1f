import { isByDeck, type Yard } from '../yard';
import { handsAtRest, type Change, type Patches } from './patch';
import type { Suspect } from './suspects';

/** Numbers of suspects by the number of something that they touch. */
class Index {
  private readonly all: number[][] = [];

  add(at: number, suspect: number): void {
    (this.all[at] ??= []).push(suspect);
  }

  at(at: number): readonly number[] {
    return this.all[at] ?? [];
  }
}

/** What of a moment matters. */
interface Mattering {
  /** Runs whose contacts do not stand as at rest. */
  readonly awake: Iterable<number>;
  /** Elements that somebody sees. */
  readonly core: Iterable<number>;
  /** 1 for each node that something joins to a source, or to where somebody looks. */
  readonly alive: Uint8Array;
}

/**
 * The suspects of a yard by what they touch, so that a moment asks none that can show nothing there:
 * those that join nothing new by their elements, others by their nodes.
 */
export class Concerns {
  private readonly byElement = new Index();
  private readonly byNode = new Index();
  private readonly byRun = new Index();
  private readonly byDeck: number[] = [];
  private isListed = false;

  constructor(
    private readonly yard: Yard,
    private readonly suspects: readonly Suspect[],
    private readonly patches: Patches
  ) {}

  private list(): void {
    this.isListed = true;
    const hands = handsAtRest(this.yard);
    this.suspects.forEach(({ fault }, suspect) => {
      if (!fault) return;
      for (const run of this.patches.touchedBy(fault)) this.byRun.add(run, suspect);
      if (isByDeck(fault)) this.byDeck.push(suspect);
      else this.touch(suspect, this.patches.of([fault], hands).changes);
    });
  }

  private touch(suspect: number, changes: readonly Change[]): void {
    const doesStay = changes.every(({ stays }) => stays);
    for (const { element, ends } of changes) {
      if (doesStay) this.byElement.add(element, suspect);
      else for (const node of ends) this.byNode.add(node, suspect);
    }
  }

  /** 1 for each suspect that may show something there. */
  in({ awake, core, alive }: Mattering): Uint8Array {
    if (!this.isListed) this.list();
    const found = new Uint8Array(this.suspects.length);
    const mark = (some: readonly number[]) => {
      for (const suspect of some) found[suspect] = 1;
    };
    mark(this.byDeck);
    for (const run of awake) mark(this.byRun.at(run));
    for (const e of core) mark(this.byElement.at(e));
    alive.forEach((isAlive, node) => {
      if (isAlive) mark(this.byNode.at(node));
    });
    return found;
  }
}
