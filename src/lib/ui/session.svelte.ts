import { driveTo, settle, start } from '../motion';
import {
  answer,
  answerKey,
  asked,
  hides,
  WATCH_SECONDS,
  way,
  type Asked,
  type Played,
  type Question
} from '../predict';
import { act, read, type Action, type Scene } from '../yard';
import type { BoardData, Side } from '../lesson';
import type { Sureness } from '../share';
import { show } from './motion';
import { didWords, seenWords } from './say';

/** One thing to decide, on one of the yards. */
export interface Slot extends Asked {
  readonly key: string;
  readonly side: number;
}

/** What came of a call. */
export interface Outcome {
  readonly answers: Readonly<Record<string, string>>;
  readonly played: readonly Played[];
  readonly right: boolean;
}

/** A board being played: its scenes, the call pending on it, and what was seen. */
export class Session {
  readonly board: BoardData;
  readonly question: Question | undefined;
  readonly slots: readonly Slot[];
  readonly starts: readonly Scene[];
  scenes = $state.raw<readonly Scene[]>([]);
  phase = $state<'asking' | 'showing' | 'open'>('open');
  picked = $state<Record<string, string>>({});
  sure = $state<Sureness>();
  outcome = $state.raw<Outcome>();
  /** Whether what is drawn is still the outcome of the call. */
  fresh = $state(false);
  status = $state('');
  drift = $state(0);
  #stop = () => undefined as void;

  constructor(board: BoardData, question: Question | undefined) {
    this.board = board;
    this.question = question;
    this.starts = board.sides.map(({ yard, scene }) => settle(yard, scene));
    this.scenes = this.starts;
    this.slots = question ? board.sides.flatMap((_, side) => this.#slotsOf(question, side)) : [];
    if (question) this.phase = 'asking';
  }

  #slotsOf(question: Question, side: number): Slot[] {
    const title = this.board.sides.length > 1 ? this.board.sides[side]?.title : undefined;
    return asked(question).map((each) => ({ ...each, side, key: answerKey(each.id, title) }));
  }

  /** Names of the things still to be decided before the call can be made. */
  get missing(): readonly string[] {
    const open = this.slots.filter(({ key }) => !this.picked[key]).map(({ key }) => key);
    return this.sure || open.length > 0 ? open : ['how sure you are'];
  }

  /** Roads and meters of a side which must not be told yet. */
  untold(side: number): ReadonlySet<string> {
    const scene = this.scenes[side];
    if (this.phase !== 'asking' || !this.question || !scene) return new Set();
    const hidden = hides(this.question);
    const { runs } = read((this.board.sides[side] as Side).yard, scene);
    const withMeter = runs.filter((run) => run.parts.some(({ id }) => hidden.includes(id)));
    const meters = withMeter.length > 0 ? runs.flatMap((run) => run.parts) : [];
    const roads = [
      ...hidden.map((name) => scene.locos[name]?.road),
      ...withMeter.map((run) => run.road)
    ];
    const ids = meters.filter((part) => part.kind === 'meter').map(({ id }) => id);
    return new Set([...roads.filter((road) => road !== undefined), ...ids]);
  }

  /** The call is made: the engine answers, then the yard is shown doing it. */
  commit(): Outcome {
    const question = this.question as Question;
    const sides = this.board.sides.map(({ yard, scene }) => answer(question, yard, scene));
    const answers = Object.fromEntries(
      this.slots.map(({ key, id, side }) => [key, sides[side]?.answers[id] as string])
    );
    const right = this.slots.every(({ key }) => this.picked[key] === answers[key]);
    const outcome = { answers, right, played: sides.map(({ played }) => played) };
    this.outcome = outcome;
    this.fresh = true;
    this.#run(question.do);
    return outcome;
  }

  /** A hand does something on the panel. */
  do(action: Action): void {
    if (this.phase === 'asking') return;
    this.fresh = false;
    this.#run(action);
  }

  /** Plays an action from the start scene. */
  tryOut(action: Action): void {
    if (this.phase === 'asking') return;
    this.scenes = this.starts;
    this.do(action);
  }

  /** Lets the yard run on for as long again. */
  runOn(): void {
    if (this.phase !== 'asking') this.#run(undefined);
  }

  /** Back to the start scene. */
  reset(): void {
    this.#stop();
    this.scenes = this.starts;
    this.fresh = false;
    if (this.phase === 'showing') this.phase = 'open';
    this.status = 'Back at the start.';
  }

  #run(action: Action | undefined): void {
    const before = this.scenes;
    const yards = this.board.sides.map(({ yard }) => yard);
    const from = yards.map((yard, side) => {
      const scene = before[side] as Scene;
      return action ? act(yard, scene, action) : scene;
    });
    this.phase = 'showing';
    let drives = from.map(start);
    this.#stop();
    this.#stop = show((share) => {
      drives = yards.map((yard, side) =>
        driveTo(yard, drives[side] as ReturnType<typeof start>, share * WATCH_SECONDS)
      );
      this.scenes = drives.map(({ scene }) => scene);
      this.drift = share * 36;
      if (share === 1) this.#ended(before, action);
    });
  }

  #ended(before: readonly Scene[], action: Action | undefined): void {
    this.phase = 'open';
    const { yard } = this.board.sides[0] as Side;
    const did = action ? didWords(yard, before[0] as Scene, action) : 'The yard runs on.';
    const seen = this.board.sides.map((side, index) => {
      const words = seenWords(side.yard, before[index] as Scene, this.scenes[index] as Scene);
      return this.board.sides.length > 1 ? `${side.title}: ${words}` : words;
    });
    this.status = [did, ...seen].join(' ');
  }

  /** What each loco of a side was seen to do since the call. */
  seen(side: number): Readonly<Record<string, { readonly way: string; readonly fromMm: number }>> {
    const played = this.fresh && this.phase === 'open' ? this.outcome?.played[side] : undefined;
    if (!played) return {};
    return Object.fromEntries(
      Object.entries(played.before.locos).map(([name, at]) => [
        name,
        { way: way(played.before, played.after, name), fromMm: at.atMm }
      ])
    );
  }
}
