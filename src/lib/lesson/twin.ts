import { questionKeys, type Question } from '../predict';
import { actionWords, joinWords, sceneWords, type Yard } from '../yard';
import { answered } from './answered';
import { fitted, fittedRows, type Side } from './board';
import type { CallInput, Reading, TwinData } from './schema';

type TwinInput = NonNullable<CallInput['twin']>;

/** The twin with what it does not state taken from the board; the engine must be able to answer it. */
export function readTwin(reading: Reading, twin: TwinInput): TwinData {
  const base = reading.board.sides[0] as Side;
  const {
    yard = base.yard,
    controller,
    second,
    supply,
    switches,
    selector,
    deck,
    pin,
    plug,
    locos,
    stock,
    edits,
    faults,
    drawn,
    ask,
    right,
    ...given
  } = twin;
  const lineOf = (path: readonly (string | number)[]) => reading.block.lineOf(['twin', ...path]);
  const place = { file: reading.file, lineOf };
  const scene = fitted(place, yard, {
    version: 1,
    controller: controller ?? base.scene.controller,
    second: second ?? base.scene.second,
    supply: supply ?? base.scene.supply,
    switches: switches ?? base.scene.switches,
    selector: selector ?? base.scene.selector,
    deck: deck ?? base.scene.deck,
    pin: deck === undefined ? (pin ?? base.scene.pin) : pin,
    plug: plug ?? base.scene.plug,
    locos: locos ?? base.scene.locos,
    stock: stock ?? (locos ? {} : base.scene.stock),
    edits: edits ?? base.scene.edits,
    faults: faults ?? base.scene.faults
  });
  const names = given.falls?.of ?? Object.keys(scene.locos);
  const asks = questionKeys.some((key) => given[key as keyof Question] !== undefined);
  const question: Question = asks ? given : { ...given, about: names };
  const side = { title: base.title, yard, scene, drawn: fittedRows(place, yard, drawn) };
  answered(reading, question, side, ['twin']);
  return {
    side,
    question,
    right,
    intro: sceneWords(yard, scene),
    ask: ask ?? spoken(question, yard, names)
  };
}

function spoken(question: Question, yard: Yard, locos: readonly string[]): string {
  const done = question.do ? `${actionWords(question.do, yard)} ` : '';
  return `${done}${askWords(question, locos)}`;
}

function askWords({ reads, testLamp, lamps }: Question, locos: readonly string[]): string {
  if (reads) return 'What does the meter read?';
  if (testLamp) return 'How does the test lamp look?';
  const names = lamps?.map((road) => `lamp ${road}`) ?? locos;
  const [do_, verb] = [names.length > 1 ? 'do' : 'does', lamps ? 'show' : 'do'];
  return `What ${do_} ${joinWords(names, 'and')} ${verb}?`;
}
