import { readySteps, testsOf, typed, type Progress } from '../../hunt';
import type { Yard } from '../../yard';
import { explainedOf, standOf, testsById, testTold } from './huntStand';
import type { HuntAsk, HuntTold, PracticeAsk, TypedTold } from './huntTold';
import { namesOf, practiceTold, practised, resumed, type Practising } from './practiceStand';

type HuntAsked = Extract<HuntAsk, { about: 'hunt' }>;

const tell = (told: HuntTold) => self.postMessage(told);

let yard: Yard | undefined;
/** What is hidden stays in here: the page is told of it once it is over. */
let practising: Practising | undefined;
/** What is still to be worked out before the first advice of a hunt with no reading, and such a hunt that waits for it. */
let steps: Iterator<Progress, void> | undefined;
let waiting: HuntAsked | undefined;

/** Works so long at a time, ms: what is asked meanwhile is answered in between. Source: common practice. */
const SLICE_MS = 50;

function typedTold(built: Yard, id: string, text: string): TypedTold {
  const test = testsById(built).get(id);
  if (!test) return { test: id, text, outcome: undefined, words: 'This yard has no such test.' };
  const found = typed(test, text);
  return 'words' in found
    ? { test: id, text, outcome: undefined, words: found.words }
    : { test: id, text, outcome: found.outcome.id, words: found.outcome.words };
}

/** Goes on with what makes the first advice ready, a slice at a time. */
function getReady(built: Yard): void {
  const until = performance.now() + SLICE_MS;
  while (steps && performance.now() < until) {
    const { done, value } = steps.next();
    if (done) steps = undefined;
    else tell({ about: 'ready', ...value });
  }
  if (steps) setTimeout(() => attempt(() => built === yard && getReady(built)));
  else if (waiting) hunted(built, waiting);
}

/** Tells how a hunt stands; where no single fault explains it, then what else could: that takes longer. */
function hunted(built: Yard, asked: HuntAsked): void {
  waiting = steps && asked.hunt.told.length === 0 ? asked : undefined;
  if (waiting) return;
  const { number, hunt } = asked;
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
    steps = readySteps(yard);
    waiting = undefined;
    getReady(yard);
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

function attempt(work: () => void): void {
  try {
    work();
  } catch (error) {
    tell({ about: 'trouble', words: error instanceof Error ? error.message : String(error) });
  }
}

self.onmessage = ({ data }: MessageEvent<HuntAsk>) => attempt(() => answer(data));
