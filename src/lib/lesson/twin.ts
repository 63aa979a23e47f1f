import type { Question } from '../predict';
import { actionWords, joinWords, sceneWords, type Yard } from '../yard';
import { answered } from './answered';
import { fitted, type Side } from './board';
import type { CallInput, Reading, TwinData } from './schema';

type TwinInput = NonNullable<CallInput['twin']>;

/** The twin with what it does not state taken from the board; the engine must be able to answer it. */
export function readTwin(reading: Reading, twin: TwinInput): TwinData {
  const base = reading.board.sides[0] as Side;
  const {
    yard = base.yard,
    controller,
    second,
    switches,
    selector,
    deck,
    pin,
    plug,
    locos,
    edits,
    faults,
    ask,
    right,
    ...given
  } = twin;
  const lineOf = (path: readonly (string | number)[]) => reading.block.lineOf(['twin', ...path]);
  const scene = fitted({ file: reading.file, lineOf }, yard, {
    version: 1,
    controller: controller ?? base.scene.controller,
    second: second ?? base.scene.second,
    switches: switches ?? base.scene.switches,
    selector: selector ?? base.scene.selector,
    deck: deck ?? base.scene.deck,
    pin: deck === undefined ? (pin ?? base.scene.pin) : pin,
    plug: plug ?? base.scene.plug,
    locos: locos ?? base.scene.locos,
    edits: edits ?? base.scene.edits,
    faults: faults ?? base.scene.faults
  });
  const names = Object.keys(scene.locos);
  const question: Question =
    (given.about ?? given.compare ?? given.which ?? given.lamps)
      ? given
      : { ...given, about: names };
  const side = { title: base.title, yard, scene };
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
  const names = question.lamps?.map((road) => `lamp ${road}`) ?? locos;
  const [do_, verb] = [names.length > 1 ? 'do' : 'does', question.lamps ? 'show' : 'do'];
  const done = question.do ? `${actionWords(question.do, yard)} ` : '';
  return `${done}What ${do_} ${joinWords(names, 'and')} ${verb}?`;
}
