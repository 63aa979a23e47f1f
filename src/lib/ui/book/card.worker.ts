import { cardSteps, operator } from '../../book';
import type { Yard } from '../../yard';
import type { CardTold } from './cardTold';

/** Faults between two words of how far it is. */
const EACH = 20;

const tell = (told: CardTold) => self.postMessage(told);

self.onmessage = ({ data }: MessageEvent<Yard>) => {
  try {
    tell({ about: 'operator', page: operator.make(data) });
    const steps = cardSteps(data);
    let step = steps.next();
    while (!step.done) {
      if (step.value.done % EACH === 0) tell({ about: 'faults', ...step.value });
      step = steps.next();
    }
    tell({ about: 'card', card: step.value });
  } catch (error) {
    tell({ about: 'trouble', words: error instanceof Error ? error.message : String(error) });
  }
};
