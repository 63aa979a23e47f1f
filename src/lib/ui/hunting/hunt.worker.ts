import { suspectsOf, testsOf } from '../../hunt';
import type { Yard } from '../../yard';
import { standOf, testTold } from './huntStand';
import type { HuntAsk, HuntTold } from './huntTold';

const tell = (told: HuntTold) => self.postMessage(told);

let yard: Yard | undefined;

function answer(ask: HuntAsk): void {
  if (ask.about === 'yard') {
    yard = ask.yard;
    const suspects = suspectsOf(yard).length;
    tell({ about: 'tests', tests: testsOf(yard).map(testTold), suspects });
  } else if (yard) tell({ about: 'stand', number: ask.number, stand: standOf(yard, ask.hunt) });
}

self.onmessage = ({ data }: MessageEvent<HuntAsk>) => {
  try {
    answer(data);
  } catch (error) {
    tell({ about: 'trouble', words: error instanceof Error ? error.message : String(error) });
  }
};
