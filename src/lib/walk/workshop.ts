import type { Round } from './round';
import { addTallies, MOST_VOTES, quietWord, type QuietWord, type Tally } from './tally';

/** What a round goes through, in its order. */
export const stages = [
  'set',
  'predict',
  'first',
  'talk',
  'second',
  'throw',
  'seen',
  'why',
  'check',
  'checked'
] as const;
export type Stage = (typeof stages)[number];

/** A vote's number, from 0. */
export type VoteNumber = 0 | 1;

/** Two votes on one call. */
export type Votes = readonly [Tally, Tally];

/** Where a workshop stands: plain data, kept on the device after every act. */
export interface Stand {
  /** The round's place in the plan, from 0; past the last one the workshop is over. */
  readonly round: number;
  readonly stage: Stage;
  /** Votes typed, and votes that came from phones, by the round's id. */
  readonly typed: Readonly<Record<string, Votes>>;
  readonly phones: Readonly<Record<string, Votes>>;
  /** The option typed last, and the digits after it. */
  readonly entry?: { readonly option: number; readonly digits: string } | undefined;
  /** Whether the hint of this round is shown. */
  readonly hint: boolean;
  /** How often the switch was thrown since the reveal. */
  readonly throws: number;
}

/** What a hand does. */
export type Act =
  | { readonly kind: 'next' | 'back' | 'throw' | 'hint' | 'reset' | 'end' }
  | { readonly kind: 'vote'; readonly option: number; readonly by: 1 | -1 }
  | { readonly kind: 'more' | 'less' }
  | { readonly kind: 'digit'; readonly digit: number };

/** A round with the place of the right option. */
export type Known = Pick<Round, 'id' | 'twin'> & {
  readonly options: number;
  readonly right: number;
};

/** The beginning. */
export const begin: Stand = {
  round: 0,
  stage: 'set',
  typed: {},
  phones: {},
  hint: false,
  throws: 0
};

/** Which vote is being taken. */
export const voteOf = (stage: Stage): VoteNumber | undefined =>
  stage === 'first' ? 0 : stage === 'second' ? 1 : undefined;

/** Whether the result of what is asked is shown. */
export const isRevealed = (stage: Stage): boolean =>
  stage === 'seen' || stage === 'why' || stage === 'checked';

/** Whether the twin is asked. */
export const isTwin = (stage: Stage): boolean => stage === 'check' || stage === 'checked';

const none = (round: Known): Votes => {
  const tally = Array.from({ length: round.options }, () => 0);
  return [tally, tally];
};

/** All votes on a round: typed, and from phones. */
export function votesOn({ typed, phones }: Stand, round: Known): Votes {
  const [typedVotes, phoneVotes] = [typed, phones].map((all) => all[round.id] ?? none(round));
  const [first, second] = ([0, 1] as const).map((vote) =>
    addTallies(typedVotes?.[vote] ?? [], phoneVotes?.[vote] ?? [])
  );
  return [first ?? [], second ?? []];
}

/** What the first vote on a round calls for. */
export const wordFor = (stand: Stand, round: Known): QuietWord | undefined =>
  quietWord(votesOn(stand, round)[0], round.right);

/** The stages that this round goes through: after a vote that was clear nobody needs to talk. */
function wayOf(stand: Stand, round: Known): readonly Stage[] {
  const clear = wordFor(stand, round) === 'go on';
  return stages.filter(
    (stage) =>
      stage === stand.stage ||
      (isTwin(stage) ? round.twin !== undefined : !(clear && ['talk', 'second'].includes(stage)))
  );
}

const at = (stand: Stand, round: number, stage: Stage): Stand => ({
  ...stand,
  round,
  stage,
  entry: undefined,
  hint: round === stand.round && stand.hint && stage !== 'set',
  throws: 0
});

function next(stand: Stand, rounds: readonly Known[]): Stand {
  const round = rounds[stand.round];
  if (!round) return stand;
  const way = wayOf(stand, round);
  const stage = way[way.indexOf(stand.stage) + 1];
  if (!stage) return at(stand, stand.round + 1, 'set');
  const hint = stand.hint || (stage === 'talk' && wordFor(stand, round) === 'hint');
  return { ...at(stand, stand.round, stage), hint };
}

function back(stand: Stand, rounds: readonly Known[]): Stand {
  const round = rounds[stand.round];
  const way = round ? wayOf(stand, round) : [];
  const stage = way[way.indexOf(stand.stage) - 1];
  if (stage) return at(stand, stand.round, stage);
  const before = rounds[stand.round - 1];
  if (!before) return stand;
  const last = wayOf({ ...stand, stage: 'set' }, before).at(-1) as Stage;
  return at(stand, stand.round - 1, last);
}

function setVotes(stand: Stand, round: Known, option: number, votes: number): Stand {
  const vote = voteOf(stand.stage);
  if (vote === undefined || option >= round.options) return stand;
  const counted = Math.min(Math.max(votes, 0), MOST_VOTES);
  const [first, second] = stand.typed[round.id] ?? none(round);
  const change = (tally: Tally, mine: VoteNumber) =>
    mine === vote ? tally.with(option, counted) : tally;
  return {
    ...stand,
    typed: { ...stand.typed, [round.id]: [change(first, 0), change(second, 1)] }
  };
}

const typedFor = ({ typed, stage }: Stand, { id }: Known, option: number): number =>
  typed[id]?.[voteOf(stage) ?? 0][option] ?? 0;

function count(stand: Stand, round: Known, option: number, by: number): Stand {
  if (voteOf(stand.stage) === undefined || option >= round.options) return stand;
  const votes = typedFor(stand, round, option) + by;
  return { ...setVotes(stand, round, option, votes), entry: { option, digits: '' } };
}

function digit(stand: Stand, round: Known, typed: number): Stand {
  if (!stand.entry) return stand;
  const { option } = stand.entry;
  const digits = `${stand.entry.digits}${typed}`;
  return { ...setVotes(stand, round, option, Number(digits)), entry: { option, digits } };
}

function thrown(stand: Stand, rounds: readonly Known[]): Stand {
  if (stand.stage === 'throw' || stand.stage === 'check') return next(stand, rounds);
  return isRevealed(stand.stage) ? { ...stand, throws: stand.throws + 1 } : stand;
}

/**
 * The workshop after an act; the same stand where the act means nothing there. The switch is thrown
 * only once the room was asked for it, a hint is given only before the reveal.
 */
export function step(stand: Stand, act: Act, rounds: readonly Known[]): Stand {
  const round = rounds[stand.round];
  if (act.kind === 'back') return back(stand, rounds);
  if (!round) return stand;
  switch (act.kind) {
    case 'next':
      return next(stand, rounds);
    case 'throw':
      return thrown(stand, rounds);
    case 'hint':
      return isRevealed(stand.stage) || isTwin(stand.stage)
        ? stand
        : { ...stand, hint: !stand.hint };
    case 'reset':
      return at({ ...stand, hint: false }, stand.round, 'set');
    case 'end':
      return at(stand, rounds.length, 'set');
    case 'vote':
      return count(stand, round, act.option, act.by);
    case 'more':
    case 'less':
      return stand.entry
        ? count(stand, round, stand.entry.option, act.kind === 'more' ? 1 : -1)
        : stand;
    case 'digit':
      return digit(stand, round, act.digit);
  }
}

/** Takes what phones have voted so far in a vote. */
export function hearPhones(stand: Stand, round: Known, vote: VoteNumber, tally: Tally): Stand {
  const [first, second] = stand.phones[round.id] ?? none(round);
  const votes: Votes = vote === 0 ? [tally, second] : [first, tally];
  return { ...stand, phones: { ...stand.phones, [round.id]: votes } };
}
