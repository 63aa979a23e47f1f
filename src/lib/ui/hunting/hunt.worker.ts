import { readySteps, testsOf, typed } from '../../hunt';
import type { Yard } from '../../yard';
import { explainedOf, standOf, testsById, testTold } from './huntStand';
import type { HuntAsk, HuntTold, PracticeAsk, TypedTold } from './huntTold';
import { namesOf, practiceTold, practised, resumed, type Practising } from './practiceStand';

const tell = (told: HuntTold) => self.postMessage(told);

let yard: Yard | undefined;
/** What is hidden stays in here: the page is told of it once it is over. */
let practising: Practising | undefined;

function typedTold(built: Yard, id: string, text: string): TypedTold {
  const test = testsById(built).get(id);
  if (!test) return { test: id, text, outcome: undefined, words: 'This yard has no such test.' };
  const found = typed(test, text);
  return 'words' in found
    ? { test: id, text, outcome: undefined, words: found.words }
    : { test: id, text, outcome: found.outcome.id, words: found.outcome.words };
}

/** Tells how a hunt stands; where no single fault explains it, then what else could: that takes longer. */
function hunted(built: Yard, { number, hunt }: Extract<HuntAsk, { about: 'hunt' }>): void {
  const stand = standOf(built, hunt);
  tell({ about: 'stand', number, stand });
  if (stand.isUnexplained)
    tell({ about: 'explained', number, explained: explainedOf(built, hunt) });
}

function practise(built: Yard, ask: PracticeAsk): void {
  practising = ask.do === 'resume' ? resumed(built, ask.kept) : practised(built, practising, ask);
  tell(practising ? { about: 'practice', practice: practiceTold(practising) } : { about: 'stale' });
}

function answer(ask: HuntAsk): void {
  if (ask.about === 'yard') {
    yard = ask.yard;
    practising = undefined;
    tell({ about: 'tests', tests: testsOf(yard).map(testTold), suspects: namesOf(yard) });
    for (const progress of readySteps(yard)) tell({ about: 'ready', ...progress });
    return;
  }
  if (!yard) return;
  switch (ask.about) {
    case 'hunt':
      hunted(yard, ask);
      break;
    case 'typed':
      tell({ about: 'typed', typed: typedTold(yard, ask.test, ask.text) });
      break;
    case 'practice':
      practise(yard, ask.ask);
  }
}

self.onmessage = ({ data }: MessageEvent<HuntAsk>) => {
  try {
    answer(data);
  } catch (error) {
    tell({ about: 'trouble', words: error instanceof Error ? error.message : String(error) });
  }
};
