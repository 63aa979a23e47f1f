import { prepare, type Element, type Prepared, type Solution } from '../circuit';
import { instrumentBetween, ohmsOf } from '../yard';
import type { Island } from './kernel';
import { known, Ways, type Range } from './range';

/** Below this no lamp glows and no loco starts, V: what has less without them has no more with them. Source: common practice. */
const NEXT_TO_NOTHING = 1;

/** A circuit that stands for every island of one shape, and the island whose ohms it has now. */
interface Bench {
  readonly prepared: Prepared;
  /** Elements that islands of the shape have, in their order. */
  readonly ids: readonly string[];
  solved: { readonly island: Powered; readonly solution: Solution } | undefined;
}

/** Islands of one shape with nothing held to them, and with something. */
class Shape {
  private readonly benches = new Map<string, Bench>();

  /** What such an island shows; it stands until the shape is asked for another. */
  solve(island: Powered, more?: Element): Solution {
    const key = more ? `${more.id} ${more.a} ${more.b}` : '';
    const known = this.benches.get(key);
    const bench = known ?? benchOf(island.elements, more);
    this.benches.set(key, bench);
    if (bench.solved?.island === island) return bench.solved.solution;
    if (known) {
      island.elements.forEach((element, index) => {
        if (element.kind === 'switch')
          bench.prepared.set(bench.ids[index] ?? '', { ohms: element.ohms });
      });
    }
    const solution = bench.prepared.solve();
    bench.solved = { island, solution };
    return solution;
  }
}

function benchOf(elements: readonly Element[], more: Element | undefined): Bench {
  const all = more ? [...elements, more] : elements;
  return {
    prepared: prepare({ ground: all[0]?.a ?? '', elements: all }),
    ids: elements.map(({ id }) => id),
    solved: undefined
  };
}

/** An island's circuit, solved once for each thing that is held to it. */
export class Powered {
  private readonly isFed: boolean;
  private readonly puts = new Map<string, Put>();
  private readonly open = new Map<string, number>();
  private ways: Ways | undefined;
  private limits: boolean | undefined;

  constructor(
    /** One for each kind of island. */
    readonly number: number,
    readonly elements: readonly Element[],
    private readonly shape: Shape
  ) {
    this.isFed = elements.some(({ kind }) => kind === 'source');
  }

  private get bare(): Solution {
    return this.shape.solve(this);
  }

  /** Volts between two nodes with nothing held there. */
  between(a: string, b: string): number {
    if (a === b || !this.isFed) return 0;
    const key = `${a} ${b}`;
    const volts = this.open.get(key) ?? this.bare.between(a, b) ?? 0;
    this.open.set(key, volts);
    return volts;
  }

  /** Whether a source other than the lamps' own gives all it can. */
  get limiting(): boolean {
    return (this.limits ??= this.isFed && this.bare.limiting.some((id) => id !== 'lamp supply'));
  }

  /** Amps through an element; undefined where it is not there. */
  amps(id: string): number | undefined {
    return this.elements.some((each) => each.id === id) ? this.bare.amps(id) : undefined;
  }

  /** At most so many ohms lie between two nodes. */
  private mostOhms(a: string, b: string): number {
    return (this.ways ??= new Ways(this.elements)).ohms(a, b);
  }

  /** Whether volts and amps rise together, up to so many amps. */
  private isLinear(amps: number): boolean {
    return this.elements.every(
      (each) =>
        each.kind !== 'diode' &&
        (each.kind !== 'source' ||
          each.id === 'lamp supply' ||
          (each.limit ?? Infinity) > amps + Math.abs(this.bare.amps(each.id)))
    );
  }

  /** Volts and amps of an element put between two nodes; a passive one has none where none were. */
  private put(element: Element): Put {
    const key = `${element.id} ${element.a} ${element.b}`;
    const known = this.puts.get(key);
    if (known) return known;
    const found = this.shape.solve(this, element);
    const put = {
      volts: found.between(element.a, element.b) ?? 0,
      amps: found.amps(element.id)
    };
    this.puts.set(key, put);
    return put;
  }

  /** Ohms between two nodes as an ohmmeter shows them. */
  ohms(a: string, b: string): Range {
    if (a === b) return known(0);
    const exact = () => {
      const { volts, amps } = this.put(instrumentBetween('ohmmeter', a, b));
      return ohmsOf(volts, amps);
    };
    return { low: 0, high: this.mostOhms(a, b), exact };
  }

  /** Volts across a passive load between two nodes. */
  loaded(element: Element): number {
    const open = Math.abs(this.between(element.a, element.b));
    return open < NEXT_TO_NOTHING ? 0 : this.put(element).volts;
  }

  /** Volts across an instrument: those without it, less what it loses in the ohms on its way. */
  held(instrument: Element): Range {
    const { a, b } = instrument;
    if (a === b) return known(0);
    const open = Math.abs(this.between(a, b));
    if (open < NEXT_TO_NOTHING) return known(0);
    const exact = () => Math.abs(this.put(instrument).volts);
    const own = instrument.kind === 'resistor' ? instrument.ohms : 0;
    if (own === 0 || !this.isLinear(open / own)) return { low: 0, high: Infinity, exact };
    return { low: (open * own) / (own + this.mostOhms(a, b)), high: open, exact };
  }
}

interface Put {
  readonly volts: number;
  readonly amps: number;
}

/** Islands by what they are made of: one for all moments and faults that lead to the same. */
export class Islands {
  private readonly shapes = new Map<string, Shape>();
  private readonly known = new Map<string, Powered>();

  of({ shape, key, elements }: Island): Powered {
    const before = this.known.get(key);
    if (before) return before;
    const same = this.shapes.get(shape) ?? new Shape();
    this.shapes.set(shape, same);
    const powered = new Powered(this.known.size, elements(), same);
    this.known.set(key, powered);
    return powered;
  }
}
