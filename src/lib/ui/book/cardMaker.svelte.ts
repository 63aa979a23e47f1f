import type { Card, Page } from '../../book';
import type { Yard } from '../../yard';
import type { CardTold } from './cardTold';

const cardWorker = (): Worker =>
  new Worker(new URL('./card.worker.ts', import.meta.url), { type: 'module' });

/** The operator card and the test card of a yard, worked out in a worker of its own. */
export class CardMaker {
  #worker: Worker | undefined;
  card = $state.raw<Card>();
  operator = $state.raw<Page>();
  /** How far it is, or why there is no card, in words. */
  words = $state('');

  /** Works out the card of this yard; what is being done for another ends. */
  follow(yard: Yard): void {
    this.close();
    this.card = undefined;
    this.operator = undefined;
    this.words = 'Working out what each meter should read.';
    const worker = cardWorker();
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<CardTold>) => this.#take(data);
    worker.onerror = () => this.#fail('This browser could not work out the test card.');
    worker.postMessage(yard);
  }

  /** Ends for good. */
  close(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }

  #take(told: CardTold): void {
    switch (told.about) {
      case 'operator':
        this.operator = told.page;
        break;
      case 'faults':
        this.words = `Working out the test card: ${told.done} of ${told.of} faults tried.`;
        break;
      case 'trouble':
        this.#fail(`The test card could not be worked out. ${told.words}`);
        break;
      case 'card':
        this.close();
        this.card = told.card;
        this.words = '';
    }
  }

  #fail(words: string): void {
    this.close();
    this.words = words;
  }
}
