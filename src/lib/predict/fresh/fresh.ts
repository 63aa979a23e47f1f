import * as v from 'valibot';
import { driveTo, settle, start } from '../../motion';
import {
  act,
  admit,
  eastMm,
  fit,
  locoNamed,
  read,
  SceneSchema,
  startingVolts,
  still,
  YardSchema,
  type Scene,
  type Yard
} from '../../yard';
import { NOTHING, SAME } from '../kinds/compare';
import { SEEN_MM } from '../way';
import { answer, asked, hides, questionEntries, type Question } from '../question';
import { chanceOf } from './chance';
import type { Cause, Draft, Family } from './family';

/** A call made fresh from a seed. */
export interface Fresh extends Pick<Draft, 'tells' | 'ask' | 'cause'> {
  readonly yard: Yard;
  readonly scene: Scene;
  readonly question: Question;
  readonly show: readonly ('rows' | 'plan')[];
}

/** Drafts tried for one seed. So many never fail in a row; see the tests. */
const ATTEMPTS = 64;

const QuestionSchema = v.strictObject(questionEntries);

/**
 * The call of a family and a seed, a whole number from 0. Drafts that a reader could not decide
 * are passed over, for others that follow from the same seed.
 * @throws RangeError when none of a seed's drafts will do.
 */
export function fresh({ id, draft }: Family, seed: number): Fresh {
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const made = admitted(draft(chanceOf(mixed(id, seed * ATTEMPTS + attempt))));
    if (isClear(made) && isDecided(made)) return made;
  }
  throw new RangeError(`Family '${id}' has no call for seed ${seed}.`);
}

/** So that one seed gives two families unlike locos and roads. */
const mixed = (id: string, seed: number): number =>
  [...id].reduce((sum, letter) => (Math.imul(sum, 31) + letter.charCodeAt(0)) >>> 0, seed);

function admitted({ tells, ask, cause, show = ['rows'], ...draft }: Draft): Fresh {
  const yard = admit('yard', YardSchema, draft.yard);
  const scene = fit('scene', yard, admit('scene', SceneSchema, draft.scene));
  const question = admit('question', QuestionSchema, draft.question);
  return { tells, ask, cause, show, yard, scene, question };
}

/** Words for each wrong option of each thing asked: the engine says which are wrong. */
export function wrongWords({
  question,
  yard,
  scene,
  cause
}: Fresh): Readonly<Record<string, Readonly<Record<string, Cause>>>> {
  const { answers, played } = answer(question, yard, scene);
  return Object.fromEntries(
    asked(question).map(({ id, options }) => {
      const right = answers[id] as string;
      const road = played.after.locos[id]?.road;
      const open = road === undefined ? undefined : played.reading.why(road).breaks[0];
      const wrong = options
        .filter((option) => option !== right)
        .map((option) => [option, cause({ id, option, answer: right, open })] as const);
      return [id, Object.fromEntries(wrong)];
    })
  );
}

/** Nearer to its starting volts than this share, nobody can say whether a loco starts. */
const NEAR = 0.2;

/**
 * Whether each loco asked about has clearly enough volts to start, or clearly too few, before and
 * after; and whether the controller is clear of its limit before. A loco held takes the most amps
 * it can, so no running one has fewer volts: standing or running, it comes to the same.
 */
function isClear({ yard, scene, question }: Fresh): boolean {
  const names = hides(question);
  const moments = [scene, question.do ? act(yard, scene, question.do) : scene];
  return moments.every((moment, index) => {
    const reading = read(yard, still(moment));
    if (index === 0 && reading.limiting) return false;
    return names.every((name) => {
      const road = moment.locos[name]?.road;
      const volts = Math.abs(reading.between(`feed rail ${road}`, `return rail ${road}`) ?? 0);
      const needs = startingVolts(locoNamed(name));
      return Math.abs(volts - needs) > NEAR * needs;
    });
  });
}

/** Shares of the old speed at which nobody can say "stops" or "slower", "slower" or "about the same", and so on. */
const UNCLEAR_SHARES = [
  [NOTHING / 2, 5 * NOTHING],
  [1 - 1.5 * SAME, 1 - SAME / 2],
  [1 + SAME / 2, 1 + 1.5 * SAME]
] as const;

/** A loco that goes only so far, mm, may be seen to roll out, or to stand. */
const UNCLEAR_MM = [SEEN_MM / 3, 4 * SEEN_MM] as const;

const isWithin = (value: number, [low, high]: readonly [number, number]): boolean =>
  value > low && value < high;

const offersStop = ({ compare }: Question): boolean =>
  (compare?.options as readonly string[] | undefined)?.includes('stops') ?? false;

/** Whether what is done leaves each loco asked about clearly running or clearly standing, clearly as fast as before or not. */
function isDecided({ yard, scene, question }: Fresh): boolean {
  const before = settle(yard, scene);
  const done = question.do ? act(yard, before, question.do) : before;
  const after = driveTo(yard, start(done), 0.5).scene;
  return hides(question).every((name) => {
    const [was, is] = [before.locos[name], after.locos[name]];
    if (!was || !is) return true;
    if (!question.compare)
      return !isWithin(Math.abs(eastMm(yard, is) - eastMm(yard, was)), UNCLEAR_MM);
    const share = Math.abs(is.speed) / Math.abs(was.speed);
    if (was.speed === 0 || (share <= NOTHING && !offersStop(question))) return false;
    return UNCLEAR_SHARES.every((range) => !isWithin(share, range));
  });
}
