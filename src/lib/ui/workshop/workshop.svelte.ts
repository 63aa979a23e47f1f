import { historyOf, type History } from '../../share';
import {
  acted,
  begin,
  heard,
  historyFrom,
  optionsOf,
  rightOf,
  takenBack,
  voteOf,
  type Act,
  type KeptWorkshop,
  type Known,
  type Round,
  type Stand,
  type Tally
} from '../../walk';
import { keepWorkshop } from './kept';

/** What a workshop asks, and how long it takes. */
export interface Programme {
  /** A plan's id, or the walkthrough's file. */
  readonly source: Pick<KeptWorkshop, 'plan' | 'walk'>;
  readonly name: string;
  readonly minutes: number;
  readonly rounds: readonly Round[];
}

const knownOf = (round: Round): Known => ({
  id: round.id,
  twin: round.twin,
  options: optionsOf(round.question).length,
  right: rightOf(round)
});

/** A workshop being held: each act is kept on the device at once. */
export class Workshop {
  readonly programme: Programme;
  readonly #known: readonly Known[];
  #history = $state.raw<History<Stand>>(historyOf(begin));
  #begunMs: number;
  showsClock = $state(true);
  /** Whether this device keeps it. */
  isKept = $state(true);

  /** Begins a workshop, or goes on with the one that was kept. */
  constructor(programme: Programme, kept?: KeptWorkshop) {
    this.programme = programme;
    this.#known = programme.rounds.map(knownOf);
    this.#begunMs = kept?.begunMs ?? Date.now();
    if (kept) {
      this.#history = historyFrom(kept, this.#known);
      this.showsClock = kept.showsClock;
    }
    this.#keep();
  }

  get stand(): Stand {
    return this.#history.now;
  }

  /** The round as the votes see it; none once the workshop is over. */
  get known(): Known | undefined {
    return this.#known[this.stand.round];
  }

  get round(): Round | undefined {
    return this.programme.rounds[this.stand.round];
  }

  /** A name that tells this workshop from others. */
  get id(): string {
    return String(this.#begunMs);
  }

  get canUndo(): boolean {
    return this.#history.past.length > 0;
  }

  /** Minutes since the beginning. */
  minutesAt(nowMs: number): number {
    return Math.max(0, Math.floor((nowMs - this.#begunMs) / 60_000));
  }

  act(act: Act): void {
    this.#history = acted(this.#history, act, this.#known);
    this.#keep();
  }

  undo(): void {
    this.#history = takenBack(this.#history);
    this.#keep();
  }

  /** Takes what phones have voted so far in the vote that is being taken. */
  hear(tally: Tally): void {
    const vote = voteOf(this.stand.stage);
    if (!this.known || vote === undefined) return;
    this.#history = heard(this.#history, this.known, vote, tally);
    this.#keep();
  }

  toggleClock(): void {
    this.showsClock = !this.showsClock;
    this.#keep();
  }

  #keep(): void {
    const { past, now } = this.#history;
    this.isKept = keepWorkshop({
      version: 1,
      ...this.programme.source,
      begunMs: this.#begunMs,
      showsClock: this.showsClock,
      past,
      now
    });
  }
}
