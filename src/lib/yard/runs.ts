/** A test instrument at the end of two probes. */
export type Instrument = 'voltmeter' | 'ohmmeter' | 'test lamp';

/** A piece of wire: its size, and its length as laid, m. */
export interface Length {
  readonly size: string;
  readonly lengthM: number;
}

/** A piece of a run that a modeller can point at: a length of wire, a contact, a resistor, a lamp or a meter. */
export interface Part {
  readonly id: string;
  readonly kind:
    | 'wire'
    | 'toggle'
    | 'selector'
    | 'push'
    | 'pin contact'
    | 'plug'
    | 'resistor'
    | 'meter'
    | 'metal'
    | 'lamp pole'
    | 'lamp'
    | 'lamp guard'
    | Instrument;
  readonly ohms: number;
  /** A switch's contact; a wire that is off is not closed. */
  readonly closed: boolean;
  /** What a wire is cut from; a rail joiner is none. */
  readonly wire?: Length;
}

/** A conductor from node to node, made of parts in the order in which one follows it. */
export interface Run {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly job: 'feed' | 'return' | 'lamp';
  /** The road it serves; runs of the whole yard have none. */
  readonly road?: string;
  readonly parts: readonly Part[];
  /** Ids of the two points at which a test instrument is held; only its run has them. */
  readonly held?: readonly [string, string];
}

/** A part with the two nodes it stands between. */
export interface Placed extends Part {
  readonly from: string;
  readonly to: string;
}

/** The parts of a run with their nodes. */
export function placed(run: Run): readonly Placed[] {
  const last = run.parts.length - 1;
  const node = (index: number) =>
    index === 0 ? run.from : index > last ? run.to : `${run.id} ${index}`;
  return run.parts.map((part, index) => ({ ...part, from: node(index), to: node(index + 1) }));
}

/** Every place of these runs that can be pointed at. */
export const places = (runs: readonly Run[]): readonly string[] =>
  runs.flatMap((run) => run.parts.map((part) => part.id));

/** A place that is not there. */
export class PlaceError extends Error {
  readonly code = 'no-such-place';
  constructor(
    readonly met: string,
    readonly allowed: readonly string[]
  ) {
    super(`No '${met}' in this yard. There are: ${allowed.join(', ')}.`);
    this.name = 'PlaceError';
  }
}

/** A place whose name is taken: a second resistor in one wire, or metal on metal. */
export class TwiceError extends PlaceError {
  constructor(met: string) {
    super(met, ['one of a name']);
    this.message = `There is a '${met}' already: one of a name.`;
    this.name = 'TwiceError';
  }
}

const has = ({ parts }: Run, id: string): boolean => parts.some((part) => part.id === id);

function mustHave(runs: readonly Run[], id: string): void {
  if (!runs.some((run) => has(run, id))) throw new PlaceError(id, places(runs));
}

/** Replaces the part `id` by other parts, and leaves all other runs as they are; throws PlaceError when it is not there. */
export function replacePart(
  runs: readonly Run[],
  id: string,
  by: (part: Part) => readonly Part[]
): readonly Run[] {
  mustHave(runs, id);
  return runs.map((run) =>
    has(run, id)
      ? { ...run, parts: run.parts.flatMap((part) => (part.id === id ? by(part) : [part])) }
      : run
  );
}

/** Puts `part` into the run right after the part `id`. */
export const insertAfter = (runs: readonly Run[], id: string, part: Part): readonly Run[] =>
  replacePart(runs, id, (old) => [old, part]);

/** The part `id` with its nodes; throws PlaceError when it is not there. */
export function findPart(runs: readonly Run[], id: string): Placed {
  const run = runs.find((each) => has(each, id));
  if (!run) throw new PlaceError(id, places(runs));
  return placed(run).find((part) => part.id === id) as Placed;
}
