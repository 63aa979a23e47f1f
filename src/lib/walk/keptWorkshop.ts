import * as v from 'valibot';
import { changed, historyOf, undone, type History } from '../share';
import { admit } from '../yard';
import { hearPhones, stages, step, type Act, type Known, type Stand } from './workshop';
import { MOST_VOTES, type Tally } from './tally';

/** Acts that can be taken back. */
const MOST_BACK = 50;

const TallySchema = v.array(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MOST_VOTES)));
const VotesSchema = v.record(v.string(), v.tuple([TallySchema, TallySchema]));

const StandSchema = v.strictObject({
  round: v.pipe(v.number(), v.integer(), v.minValue(0)),
  stage: v.picklist(stages),
  typed: VotesSchema,
  phones: VotesSchema,
  entry: v.optional(v.strictObject({ option: v.number(), digits: v.string() })),
  hint: v.boolean(),
  throws: v.number()
});

const KeptSchema = v.strictObject({
  version: v.literal(1),
  /** Id of a plan; none where the calls are a walkthrough's. */
  plan: v.optional(v.string()),
  /** The walkthrough's file. */
  walk: v.optional(v.unknown()),
  /** When it began, ms of the device's clock. */
  begunMs: v.number(),
  showsClock: v.boolean(),
  past: v.pipe(v.array(StandSchema), v.maxLength(MOST_BACK)),
  now: StandSchema
});

/** What the device keeps of a workshop, so that it goes on after sleep and reload. */
export interface KeptWorkshop extends Omit<v.InferOutput<typeof KeptSchema>, 'past' | 'now'> {
  /** Stands before this one, the newest last. */
  readonly past: readonly Stand[];
  readonly now: Stand;
}

/**
 * Lets a kept workshop in.
 * @throws BorderError when it does not have the form.
 */
export const admitWorkshop = (value: unknown): KeptWorkshop => admit('workshop', KeptSchema, value);

/** A stand that fits the rounds: votes on other options than there are now do not count. */
function fitted(stand: Stand, rounds: readonly Known[]): Stand {
  const fits = (votes: Stand['typed']) =>
    Object.fromEntries(
      Object.entries(votes).filter(([id, both]) => {
        const round = rounds.find((each) => each.id === id);
        return both.every(({ length }) => length === round?.options);
      })
    );
  return {
    ...stand,
    round: Math.min(stand.round, rounds.length),
    typed: fits(stand.typed),
    phones: fits(stand.phones)
  };
}

/** A kept workshop's stands, as its rounds are now. */
export const historyFrom = (
  { past, now }: Pick<KeptWorkshop, 'past' | 'now'>,
  rounds: readonly Known[]
): History<Stand> => ({
  ...historyOf(fitted(now, rounds)),
  past: past.map((stand) => fitted(stand, rounds))
});

/** The workshop after an act, which can be taken back. */
export const acted = (
  history: History<Stand>,
  act: Act,
  rounds: readonly Known[]
): History<Stand> => changed(history, step(history.now, act, rounds), { most: MOST_BACK });

/** The last act taken back; what phones have voted stays. */
export function takenBack(history: History<Stand>): History<Stand> {
  const { phones } = history.now;
  const before = undone(history);
  return { ...before, now: { ...before.now, phones }, future: [] };
}

/** The workshop with what phones have voted so far in a vote. */
export const heard = (
  history: History<Stand>,
  ...votes: [round: Known, vote: 0 | 1, tally: Tally]
): History<Stand> => ({ ...history, now: hearPhones(history.now, ...votes) });
