import type { CheckOptions, FaultTable, Finding, Grade, Told } from '../../checks';
import type { Yard } from '../../yard';
import type { Job, WorkerTold } from './told';
import { checksWorker } from './worker';

/** How long the yard has to stand still before its checks begin, ms. */
const PAUSE_MS = 400;

type CheckTold = Extract<Told, { readonly about: 'check' }>;

/** A finding with the question that it answers. */
export interface Answer {
  readonly id: string;
  readonly question: string;
  readonly finding: Finding;
}

/** The checks of a yard, run in a worker of their own: what was found so far, and how far it is. */
export class Inspection {
  #worker: Worker | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #job: Job | undefined;
  #told = $state.raw<readonly CheckTold[]>([]);
  table = $state.raw<FaultTable>();
  stand = $state<'running' | 'done' | 'cancelled' | 'failed'>('running');
  /** What is being done, in words. */
  doing = $state('');
  /** Two faults at once: what they let happen, or why they are not tried. */
  pairs = $state.raw<FaultTable | string>();
  /** How far the faults are; undefined before they begin. */
  faults = $state.raw<{ readonly done: number; readonly of: number }>();
  /** Why the checks could not be finished. */
  trouble = $state('');

  readonly answers: readonly Answer[] = $derived(
    this.#told.flatMap(({ id, title, findings }) =>
      findings.map((finding) => ({ id, question: title, finding }))
    )
  );

  of = (grade: Grade): readonly Answer[] =>
    this.answers.filter(({ finding }) => finding.grade === grade);

  /** Checks this yard once it has stood still for a moment; what is being done for another ends. */
  follow(yard: Yard, options: CheckOptions): void {
    this.#wait({ yard, options });
  }

  /** Stops where it is; what was found so far stays. */
  cancel(): void {
    this.#end();
    this.stand = 'cancelled';
  }

  again(): void {
    if (this.#job) this.#wait(this.#job);
  }

  /** Ends for good. */
  close(): void {
    this.#end();
  }

  #wait(job: Job): void {
    this.#end();
    this.#job = job;
    this.#clear();
    this.#timer = setTimeout(() => this.#begin(job), PAUSE_MS);
  }

  #clear(): void {
    this.#told = [];
    this.table = undefined;
    this.pairs = undefined;
    this.faults = undefined;
    this.trouble = '';
    this.doing = '';
    this.stand = 'running';
  }

  #begin(job: Job): void {
    const worker = checksWorker();
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<WorkerTold>) => this.#take(data);
    worker.onerror = () => this.#fail('This browser could not begin the checks.');
    worker.postMessage(job);
  }

  #take(told: WorkerTold): void {
    switch (told.about) {
      case 'doing':
        this.doing = `${told.title} Question ${told.done + 1} of ${told.of}.`;
        break;
      case 'check':
        this.#told = [...this.#told, told];
        break;
      case 'faults':
        this.doing = `What if one thing fails? ${told.done} of ${told.of} faults tried.`;
        this.faults = told;
        break;
      case 'pairs':
        this.doing = `What if two things fail? ${told.done} of ${told.of} pairs of faults tried.`;
        this.faults = told;
        break;
      case 'table':
        this.table = told.table;
        break;
      case 'pair table':
        this.pairs = told.table;
        break;
      case 'no pairs':
        this.pairs = told.words;
        break;
      case 'trouble':
        this.#fail(told.words);
        break;
      case 'end':
        this.#end();
        this.stand = 'done';
    }
  }

  #fail(words: string): void {
    this.#end();
    this.trouble = words;
    this.stand = 'failed';
  }

  #end(): void {
    clearTimeout(this.#timer);
    this.#worker?.terminate();
    this.#worker = undefined;
  }
}
