import { listen } from './listen';

interface Seen {
  readonly round: number;
  readonly letters: readonly string[];
  readonly vote: 1 | 2;
  readonly open: boolean;
  readonly yours: string | null;
}

interface Refusal {
  readonly says: string;
}

/** One phone's seat in the room. The server alone knows the seat: loading the page anew changes nothing. */
export class Seat {
  /** `full` where the room takes no more phones. */
  state = $state<'joining' | 'here' | 'lost' | 'full'>('joining');
  /** What is voted on now; null before the first vote. */
  seen = $state.raw<Seen | null>(null);
  /** Why the last letter was not taken; empty when it was. */
  trouble = $state('');

  readonly #base: string;
  #stop: () => void = () => {};
  #ended = false;

  constructor(base: string) {
    this.#base = base;
    void this.#sit();
  }

  /** Votes for a letter, in place of the one before. */
  async choose(letter: string): Promise<void> {
    if (!this.seen) return;
    const { status, told } = await this.#post('vote', { round: this.seen.round, letter });
    if (status === 401) await this.#join();
    if (status === 200) this.seen = told as Seen;
    const says = status === 0 ? 'The room cannot be reached: try again.' : (told as Refusal).says;
    this.trouble = status === 200 ? '' : `${letter} was not counted. ${says}`;
  }

  /** Leaves the seat, when the page goes. */
  leave(): void {
    this.#ended = true;
    this.#stop();
  }

  async #sit(): Promise<void> {
    await this.#join();
    if (this.#ended) return;
    this.#stop = listen(`${this.#base}/room/events`, {
      hear: {
        round: (seen) => {
          this.seen = seen as Seen | null;
          this.trouble = '';
        }
      },
      stands: (yes) => {
        if (yes) this.state = 'here';
        else if (this.state === 'here') this.state = 'lost';
      },
      refused: () => this.#join()
    });
  }

  async #join(): Promise<void> {
    const { status } = await this.#post('join', {});
    if (status !== 200) this.state = status === 503 ? 'full' : 'lost';
  }

  /** Sends JSON; status 0 where the room cannot be reached. */
  async #post(path: string, value: unknown): Promise<{ status: number; told: unknown }> {
    try {
      const answer = await fetch(`${this.#base}/room/${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(value)
      });
      return { status: answer.status, told: await answer.json() };
    } catch {
      return { status: 0, told: undefined };
    }
  }
}
