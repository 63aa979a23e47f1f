import { prepare, solve, type Element, type Prepared, type Solution } from '../../circuit';
import {
  apply,
  circuitOf,
  findPoint,
  ohmsOf,
  switchedProbe,
  type Fault,
  type Instrument,
  type Yard
} from '../../yard';
import type { Pair, TestLine } from './line';

/** A circuit ready to be read: the elements that it has, as they stand now. */
interface Bench {
  readonly circuit: Prepared;
  readonly elements: Element[];
  /** Switches of the instruments that are held. */
  held: readonly string[];
}

/** Circuits with a fault that are kept ready: with the supply and without, and one more. */
const KEPT = 3;

const sameForm = (a: Element, b: Element): boolean =>
  a === b || (a.id === b.id && a.kind === b.kind && a.a === b.a && a.b === b.b);

const haveForm = (some: readonly Element[], others: readonly Element[]): boolean =>
  some.length === others.length &&
  some.every((element, index) => sameForm(element, others[index] as Element));

const closedOf = (element: Element): boolean => element.kind === 'switch' && element.closed;

/** A point pair with the nodes that it stands for, and the instruments that can be held to it. */
interface Place {
  readonly id: string;
  readonly nodes: Pair;
}

const instrumentsOf = ({ how }: TestLine): readonly Instrument[] =>
  how === 'ohms' ? ['ohmmeter'] : how === 'load' ? ['voltmeter', 'test lamp'] : ['voltmeter'];

/**
 * Reads the lines of a card in one yard, sound or with a fault. The instruments of all lines stand in
 * one circuit behind switches, so that a line is a few switches thrown: the readings are those of
 * `read` with the same instruments held.
 */
export class CardReader {
  readonly #yard: Yard;
  readonly #places = new Map<string, Place>();
  readonly #probes: readonly Element[];
  /** Circuits of the sound yard: one for each form that its wiring takes. */
  #sound: readonly Bench[] = [];
  #faulty: readonly Bench[] = [];
  /** The form that was solved by itself last: asked again, it is worth keeping ready. */
  #lone: readonly Element[] = [];

  constructor(yard: Yard, lines: readonly TestLine[]) {
    this.#yard = yard;
    this.#probes = [...new Map(lines.flatMap((line) => this.#probesOf(line))).values()].flat();
  }

  #probesOf(line: TestLine): readonly (readonly [string, readonly Element[]])[] {
    const { nodes, id } = this.#placeOf(line);
    return instrumentsOf(line).map((kind) => {
      const name = `${kind} ${id}`;
      return [name, switchedProbe(kind, name, nodes)] as const;
    });
  }

  #placeOf({ probes, scene }: TestLine): Place {
    const id = probes.join(' – ');
    const known = this.#places.get(id);
    if (known) return known;
    const runs = apply(this.#yard, { ...scene, faults: [] });
    const [a, b] = probes.map((point) => findPoint(runs, point).node) as [string, string];
    const place = { id, nodes: [a, b] as const };
    this.#places.set(id, place);
    return place;
  }

  /** What a line's meter reads, V or Ω; Infinity is an open circuit. */
  reads(line: TestLine, fault?: Fault): number {
    const faults = fault === undefined ? [] : [fault];
    const { elements } = circuitOf(this.#yard, { ...line.scene, faults });
    const { nodes, id } = this.#placeOf(line);
    const solution = this.#solved(line, elements, fault === undefined);
    const volts = solution.between(...nodes) ?? 0;
    return line.how === 'ohms' ? ohmsOf(volts, solution.amps(`ohmmeter ${id}`)) : volts;
  }

  #solved(line: TestLine, elements: readonly Element[], isSound: boolean): Solution {
    const bench =
      [...this.#sound, ...this.#faulty].find((each) => haveForm(each.elements, elements)) ??
      (isSound || haveForm(this.#lone, elements) ? this.#newBench(elements, isSound) : undefined);
    if (!bench) {
      this.#lone = elements;
      return solve({ ground: 'return', elements: [...elements, ...this.#heldTo(line)] });
    }
    elements.forEach((element, index) => put(bench, element, index));
    const { id } = this.#placeOf(line);
    hold(
      bench,
      instrumentsOf(line).map((kind) => `${kind} ${id} held`)
    );
    return bench.circuit.solve();
  }

  /** The instruments of one line, held. */
  #heldTo(line: TestLine): readonly Element[] {
    return this.#probesOf(line)
      .flatMap(([, probe]) => probe)
      .map((element) => (element.kind === 'switch' ? { ...element, closed: true } : element));
  }

  #newBench(elements: readonly Element[], isSound: boolean): Bench {
    const circuit = prepare({ ground: 'return', elements: [...elements, ...this.#probes] });
    const bench: Bench = { circuit, elements: [...elements], held: [] };
    if (isSound) this.#sound = [...this.#sound, bench];
    else this.#faulty = [bench, ...this.#faulty].slice(0, KEPT);
    return bench;
  }
}

/** Takes the instruments off that were held, and holds others. */
function hold(bench: Bench, held: readonly string[]): void {
  for (const each of bench.held) bench.circuit.set(each, { closed: false });
  for (const each of held) bench.circuit.set(each, { closed: true });
  bench.held = held;
}

/** Gives an element of a bench the values that it has now. */
function put({ circuit, elements }: Bench, now: Element, index: number): void {
  const before = elements[index] as Element;
  if (before === now) return;
  if (closedOf(before) !== closedOf(now)) circuit.set(now.id, { closed: closedOf(now) });
  if (ohmsIn(before) !== ohmsIn(now)) circuit.set(now.id, { ohms: ohmsIn(now) });
  if (before.kind === 'source' && now.kind === 'source' && before.volts !== now.volts) {
    circuit.set(now.id, { volts: now.volts });
  }
  elements[index] = now;
}

const ohmsIn = (element: Element): number => ('ohms' in element ? element.ohms : 0);
