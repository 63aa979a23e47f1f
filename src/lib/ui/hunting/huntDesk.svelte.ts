import type { Yard } from '../../yard';
import type {
  ExplainedTold,
  HuntAsk,
  HuntAsked,
  HuntTold,
  NamedTold,
  PracticeAsk,
  PracticeTold,
  StandTold,
  TestTold,
  TypedTold
} from './huntTold';

const huntWorker = (): Worker =>
  new Worker(new URL('./hunt.worker.ts', import.meta.url), { type: 'module' });

/** The tests and suspects of a yard, and how hunts in it stand; worked out in a worker of its own. */
export class HuntDesk {
  #worker: Worker | undefined;
  #number = 0;
  tests = $state.raw<readonly TestTold[]>([]);
  suspects = $state.raw<readonly NamedTold[]>([]);
  stand = $state.raw<StandTold>();
  /** The reading that was typed last. */
  typed = $state.raw<TypedTold>();
  practice = $state.raw<PracticeTold>();
  /** Whether the practice hunt waits for what it asked. */
  isPractising = $state(false);
  /** Whether the kept practice hunt does not fit the yard. */
  isStale = $state(false);
  /** What else could explain the readings of the stand. */
  explained = $state.raw<ExplainedTold>();
  /** Whether the stand belongs to what was asked last. */
  fresh = $state(false);
  /** What is being worked out, or why it cannot be, in words. */
  words = $state('');

  find = (id: string | undefined): TestTold | undefined =>
    this.tests.find((test) => test.id === id);

  /** Takes up another yard; what is being worked out for the one before ends. */
  follow(yard: Yard): void {
    this.close();
    this.tests = [];
    this.stand = undefined;
    this.practice = undefined;
    this.isPractising = false;
    this.isStale = false;
    this.words = 'Listing every test of the yard.';
    const worker = huntWorker();
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<HuntTold>) => this.#take(data);
    worker.onerror = () => this.#fail('This browser could not begin the hunt.');
    this.#ask({ about: 'yard', yard });
  }

  /** Asks how a hunt stands. */
  weigh(hunt: HuntAsked): void {
    this.fresh = false;
    this.explained = undefined;
    this.#number += 1;
    this.#ask({ about: 'hunt', number: this.#number, hunt });
  }

  /** Asks which outcome a typed reading is. */
  type(test: string, text: string): void {
    this.typed = undefined;
    this.#ask({ about: 'typed', test, text });
  }

  /** Does something in the practice hunt. */
  practise(ask: PracticeAsk): void {
    this.isPractising = true;
    this.isStale = false;
    this.#ask({ about: 'practice', ask });
  }

  /** Ends for good. */
  close(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }

  #ask(ask: HuntAsk): void {
    this.#worker?.postMessage(ask);
  }

  #take(told: HuntTold): void {
    switch (told.about) {
      case 'tests':
        this.tests = told.tests;
        this.suspects = told.suspects;
        this.words = 'Working out what each suspect would show.';
        break;
      case 'ready':
        this.words =
          told.done < told.of
            ? `Working out what each suspect would show: ${told.done} of ${told.of}.`
            : '';
        break;
      case 'stand':
        if (told.number !== this.#number) return;
        this.stand = told.stand;
        this.fresh = true;
        this.words = '';
        break;
      case 'explained':
        if (told.number === this.#number) this.explained = told.explained;
        break;
      case 'typed':
        this.typed = told.typed;
        break;
      case 'practice':
        this.practice = told.practice;
        this.isPractising = false;
        break;
      case 'stale':
        this.isStale = true;
        this.isPractising = false;
        break;
      case 'trouble':
        this.#fail(`The hunt could not go on. ${told.words}`);
    }
  }

  #fail(words: string): void {
    this.close();
    this.words = words;
  }
}
