import { driver, isOver, settle, start, way, type StepPlayed } from '../motion';
import {
  answer,
  answerKey,
  asked,
  WATCH_SECONDS,
  type Asked,
  type Played,
  type Question
} from '../predict';
import {
  act,
  PlaceError,
  read,
  RefusedError,
  type Action,
  type Reading,
  type Scene
} from '../yard';
import type { BoardData, Side } from '../lesson';
import type { Sureness } from '../share';
import { show } from './motion';
import { between } from './between';
import { didWords, isMeasuring, probeWords, seenWords } from './say';
import { unique } from './unique';
import { untoldOn } from './untold';

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

/** One yard of the board as it stands now. */
export interface View extends Side {
  readonly index: number;
  readonly reading: Reading;
}

/** A board being played: its scenes, the call pending on it, and what was seen. */
export class Session {
  readonly board: BoardData;
  readonly question: Question | undefined;
  readonly slots: readonly Slot[];
  readonly starts: readonly Scene[];
  #scenes = $state.raw<readonly Scene[]>([]);
  phase = $state<'asking' | 'showing' | 'open'>('open');
  picked = $state<Record<string, string>>({});
  sure = $state<Sureness>();
  outcome = $state.raw<Outcome>();
  /** Whether what is drawn is still the outcome of the call. */
  fresh = $state(false);
  status = $state('');
  /** How far chevrons have drifted, px. */
  drift = $state(0);
  #stop: () => void = () => undefined;

  /** The readings of the last scenes, for what stays the same in the next. */
  #readings: readonly Reading[] = [];
  /** Whether the board is on its way from another scene to its start. */
  #sliding = $state(false);
  /** The views as they stood before what is shown now began; while the board slides, as they will. */
  #still: readonly View[] = [];

  readonly views: readonly View[] = $derived.by(() => {
    this.#readings = this.#sides.map(({ yard, scene }, index) =>
      read(yard, this.#scenes[index] ?? scene, this.#readings[index])
    );
    return this.#readings.map((reading, index) => {
      const side = this.#sides[index] as Side;
      return { ...side, index, scene: reading.scene, reading };
    });
  });
  /** The views at rest: while something is shown, as they stood before. */
  readonly resting: readonly View[] = $derived(
    this.phase === 'showing' || this.#sliding ? this.#still : this.views
  );

  constructor(board: BoardData, question: Question | undefined) {
    this.board = board;
    this.question = question;
    this.starts = board.sides.map(({ yard, scene }) => settle(yard, scene));
    this.#scenes = this.starts;
    this.slots = question ? board.sides.flatMap((_, side) => this.#slotsOf(question, side)) : [];
    if (question) this.phase = 'asking';
  }

  /** Whether nothing was done on the board yet. */
  get untouched(): boolean {
    return this.#sliding || this.#scenes === this.starts;
  }

  get #sides(): readonly Side[] {
    return this.board.sides;
  }

  #slotsOf(question: Question, side: number): Slot[] {
    const title = this.#sides.length > 1 ? this.#sides[side]?.title : undefined;
    return asked(question).map((each) => ({ ...each, side, key: answerKey(each.id, title) }));
  }

  /** The first yard of the board. */
  get first(): View {
    return this.views[0] as View;
  }

  /** What was asked and called wrongly. */
  get missed(): readonly Slot[] {
    return this.slots.filter(({ key }) => this.picked[key] !== this.outcome?.answers[key]);
  }

  /** Names of the things still to be decided before the call can be made. */
  get missing(): readonly string[] {
    const open = this.slots.filter(({ key }) => !this.picked[key]).map(({ key }) => key);
    return this.sure || open.length > 0 ? open : ['how sure you are'];
  }

  /** Roads and meters of a yard which must not be told yet. */
  untold(view: View): readonly string[] {
    return this.phase === 'asking' && this.question ? untoldOn(this.question, view) : [];
  }

  /** What the engine answers to the call. */
  solve(): Outcome {
    const question = this.question as Question;
    const sides = this.#sides.map(({ yard, scene }) => answer(question, yard, scene));
    const answers = Object.fromEntries(
      this.slots.map(({ key, id, side }) => [key, sides[side]?.answers[id] as string])
    );
    const right = this.slots.every(({ key }) => this.picked[key] === answers[key]);
    return { answers, right, played: sides.map(({ played }) => played) };
  }

  /** The call is made: the engine answers, then the yard is shown doing it. */
  commit(): Outcome {
    this.outcome = this.solve();
    this.fresh = true;
    this.#run(this.question?.do);
    return this.outcome;
  }

  /** Shows the board going from another scene of its first yard to its start. */
  slideFrom(before: Scene): void {
    const [to] = this.starts as [Scene];
    this.#still = this.views;
    this.#sliding = true;
    this.#stop = show((share) => {
      this.#scenes = share < 1 ? [between(before, to, share)] : this.starts;
      this.#sliding = share < 1;
    });
    if (this.#sliding) this.#scenes = [between(before, to, 0)];
  }

  /** A hand does something on the panel; tells whether it could. */
  do(action: Action): boolean {
    if (this.phase === 'asking' || isOver(this.first.scene)) return false;
    this.fresh = false;
    return this.#run(action);
  }

  /** Plays an action from the start scene. */
  tryOut(action: Action): void {
    if (this.phase === 'asking') return;
    this.#scenes = this.starts;
    this.do(action);
  }

  /** Lets the yard run on for as long again. */
  runOn(): void {
    if (this.phase !== 'asking' && !isOver(this.first.scene)) this.#run(undefined);
  }

  /** Shows a step of a working from its begin to its end; then `ended` is called. */
  showStep({ begun, seconds, scene }: StepPlayed, words: string, ended: () => void): void {
    this.#stop();
    const { yard } = this.first;
    const go = driver(yard);
    let drive = start(begun);
    this.fresh = false;
    this.#showing();
    this.#stop = show((share) => {
      if (share < 1) drive = go(drive, share * seconds);
      this.#scenes = [share < 1 ? drive.scene : scene];
      this.drift = share * 36;
      if (share < 1) return;
      this.phase = 'open';
      this.status = words;
      ended();
    });
  }

  /** Shows a scene as it stands. */
  stand(scene: Scene, words: string): void {
    this.reset();
    this.#scenes = [scene];
    this.status = words;
  }

  /** Back to the start scene. */
  reset(): void {
    this.#land();
    this.fresh = false;
    this.drift = 0;
    if (this.phase === 'showing') this.phase = 'open';
    this.status = 'Back at the start.';
  }

  /** Ends what is shown, at the start. */
  #land(): void {
    this.#stop();
    this.#sliding = false;
    this.#scenes = this.starts;
  }

  #showing(): void {
    this.#still = this.resting;
    this.phase = 'showing';
  }

  #run(action: Action | undefined): boolean {
    if (this.#sliding) this.#land();
    const before = this.views;
    const begun = this.#begin(before, action);
    if (!begun) return false;
    this.#stop();
    this.#showing();
    let drives = begun;
    this.#stop = show((share) => {
      drives = drives.map(({ go, drive }) => ({
        go,
        drive: go(drive, share * WATCH_SECONDS)
      }));
      this.#scenes = drives.map(({ drive }) => drive.scene);
      this.drift = share * 36;
      if (share === 1) this.#ended(before, action);
    });
    return true;
  }

  /** The drives that an action begins; none when it cannot be done, which the status tells. */
  #begin(before: readonly View[], action: Action | undefined) {
    try {
      return before.map(({ yard, scene }) => {
        const next = action ? act(yard, scene, action) : scene;
        read(yard, next);
        return { go: driver(yard), drive: start(next) };
      });
    } catch (error) {
      if (!(error instanceof PlaceError || error instanceof RefusedError)) throw error;
      this.status = error.message;
      return undefined;
    }
  }

  #ended(before: readonly View[], action: Action | undefined): void {
    this.phase = 'open';
    const [first] = before as [View];
    const did = action ? didWords(first.yard, first.scene, action) : 'Three seconds on.';
    const shows = probeWords(first, this.first);
    const seen = isMeasuring(first.scene, this.first.scene)
      ? []
      : this.views.map(({ yard, scene, title, index }) => {
          const words = seenWords(yard, before[index]?.scene ?? scene, scene);
          return this.#sides.length > 1 ? `In the ${title}, ${words}` : words;
        });
    this.status = [did, ...shows, ...seen].filter(Boolean).join(' ');
  }

  /** What the call's outcome shows on a yard; nothing once hands have done something else. */
  #playedOn(index: number): Played | undefined {
    return this.fresh && this.phase === 'open' ? this.outcome?.played[index] : undefined;
  }

  /** First open place of each loco asked about which stays. */
  breaks({ index }: View): readonly string[] {
    const played = this.#playedOn(index);
    if (!played) return [];
    const still = this.slots.filter(
      (slot) => slot.side === index && this.outcome?.answers[slot.key] === 'stays'
    );
    const open = still.flatMap(({ id }) =>
      played.reading.why(played.after.locos[id]?.road as string).breaks.slice(0, 1)
    );
    return unique(open).slice(0, 2);
  }

  /** What each loco of a yard was seen to do since the call, and where it started, mm. */
  seen({
    index
  }: View): Readonly<Record<string, { readonly way: string; readonly fromMm: number }>> {
    const played = this.#playedOn(index);
    if (!played) return {};
    return Object.fromEntries(
      Object.entries(played.before.locos).map(([name, at]) => [
        name,
        { way: way(played, name), fromMm: at.atMm }
      ])
    );
  }

  /** What was said of each loco of a yard that can go west or east. */
  calls({ index }: View): Readonly<Record<string, string>> {
    if (this.phase !== 'asking' && !this.fresh) return {};
    const moving = this.slots.filter(
      (slot) => slot.side === index && slot.options.includes('west')
    );
    return Object.fromEntries(
      moving.flatMap(({ key, id }) => (this.picked[key] ? [[id, this.picked[key]]] : []))
    );
  }
}
