import { act, apply, places, vehicles } from '../yard';
import type { Entry } from './answered';
import { LessonError } from './error';
import type { CallData, Reading, Wrong, WrongOptions } from './schema';

type Fail = (path: readonly string[], met: string, allowed: string) => LessonError;

/** The words for wrong options, checked against the engine's answers: all of them, and no other. */
export function wrongWords(reading: Reading, all: readonly Entry[]): CallData['wrong'] {
  const { file, block } = reading;
  const fail: Fail = (path, met, allowed) =>
    new LessonError(file, block.lineOf(['wrong', ...path]), met, allowed);
  const given = all.length > 1 ? block.value.wrong : { [all[0]?.key as string]: block.value.wrong };
  const pointable = targets(reading);
  return Object.fromEntries(
    all.map((entry) => {
      const options = (given[entry.key] ?? {}) as WrongOptions;
      const base = all.length > 1 ? [entry.key] : [];
      mustCover(entry, options, (path, met, allowed) => fail([...base, ...path], met, allowed));
      for (const [option, wrong] of Object.entries(options)) {
        mustPoint(wrong, pointable, (path, met, allowed) =>
          fail([...base, option, ...path], met, allowed)
        );
      }
      return [entry.key, options];
    })
  );
}

function mustCover({ key, options, answer }: Entry, given: WrongOptions, fail: Fail): void {
  const needed = options.filter((option) => option !== answer);
  const allowed = needed.join(', ');
  for (const option of Object.keys(given)) {
    if (option === answer)
      throw fail([option], `words for '${option}', which is what happens`, allowed);
    if (!needed.includes(option))
      throw fail([option], `unknown option '${option}' for ${key}`, allowed);
  }
  const missing = needed.find((option) => !(option in given));
  if (missing) throw fail([], `no words for ${key}: '${missing}'`, `words for ${allowed}`);
}

function mustPoint(wrong: Wrong, allowed: readonly string[], fail: Fail): void {
  if (!allowed.includes(wrong.at)) {
    throw fail(['at'], `\`at\` points to '${wrong.at}'`, allowed.join(', '));
  }
}

/** Every place there is before or after what is done. */
function targets({ board, block }: Reading): readonly string[] {
  const found = board.sides.flatMap(({ yard, scene }) => {
    const after = block.value.do ? act(yard, scene, block.value.do) : scene;
    return [
      ...places(apply(yard, scene)),
      ...places(apply(yard, after)),
      ...Object.keys(vehicles(scene))
    ];
  });
  return [...new Set([...found, 'controller'])];
}
