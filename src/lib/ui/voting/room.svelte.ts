import { listen } from './listen';

/** One vote that phones are asked for. */
export interface Round {
  /** Any name that tells this call from the others. */
  readonly id: string;
  readonly letters: readonly string[];
  readonly vote: 1 | 2;
}

interface Told {
  readonly address: string;
  readonly voters: number;
  readonly round: Pick<Round, 'id' | 'vote'> | null;
  readonly tallies: Readonly<Record<string, number>>;
}

/** Where this tab keeps the key of its room until it is closed. */
const KEY = 'ohmyard-room-key';
const inHash = /^#room=([\w-]+)$/;

/** The key in the page's address, taken out of it at once because everyone can read the screen. */
function takeKey(): string | undefined {
  const key = inHash.exec(location.hash)?.[1];
  if (key) {
    history.replaceState(history.state, '', location.pathname + location.search);
    sessionStorage.setItem(KEY, key);
  }
  return key ?? sessionStorage.getItem(KEY) ?? undefined;
}

/**
 * The room of phones, as the projector's page sees it. What is opened here stays opened when the
 * connection drops or the page is loaded anew: opening the same round again keeps its votes.
 */
export class Room {
  /** `joining` until the server has answered, `lost` while it cannot be reached. */
  state = $state<'joining' | 'ready' | 'lost'>('joining');
  /** Where phones vote, for people to read; empty until it is known. */
  address = $state('');
  /** Phones in the room now. */
  voters = $state(0);
  /** Votes for each letter of the round last opened; it keeps them after it is closed. */
  tallies = $state.raw<Readonly<Record<string, number>>>({});

  readonly #base: string;
  readonly #key: string;
  readonly #stop: () => void;
  #round: Round | undefined;
  #isOpen = false;

  constructor(base: string, key: string) {
    this.#base = base;
    this.#key = key;
    this.#stop = listen(`${base}/room/tallies?key=${key}`, {
      hear: { tally: (told) => this.#hear(told as Told) },
      stands: (yes) => {
        if (yes && this.state === 'lost') void this.#send();
        this.state = yes ? 'ready' : 'lost';
      }
    });
  }

  /** Asks the phones for a letter each. */
  open(round: Round): void {
    const same = round.id === this.#round?.id && round.vote === this.#round.vote;
    if (!same) this.tallies = Object.fromEntries(round.letters.map((letter) => [letter, 0]));
    this.#round = { ...round };
    this.#isOpen = true;
    void this.#send();
  }

  /** Takes no more votes; the tallies stay. */
  close(): void {
    if (!this.#isOpen) return;
    this.#isOpen = false;
    void this.#send();
  }

  /** Ends the connection, when the page goes. */
  leave(): void {
    this.#stop();
  }

  #hear({ address, voters, round, tallies }: Told): void {
    this.address = address;
    this.voters = voters;
    if (round?.id === this.#round?.id && round?.vote === this.#round?.vote) this.tallies = tallies;
  }

  async #send(): Promise<void> {
    if (!this.#round) return;
    try {
      const { ok } = await fetch(`${this.#base}/room/round`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'room-key': this.#key },
        body: JSON.stringify({ ...this.#round, open: this.#isOpen })
      });
      if (!ok) this.state = 'lost';
    } catch {
      this.state = 'lost';
    }
  }
}

/** The room of this page, where the workshop's own address opened it; undefined on any other site. */
export function enterRoom(base: string): Room | undefined {
  const key = takeKey();
  return key === undefined ? undefined : new Room(base, key);
}
