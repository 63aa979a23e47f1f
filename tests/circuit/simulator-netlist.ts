import type { Circuit, Element, Solution } from '../../src/lib/circuit';
import { thermalVoltage } from '../../src/lib/tables';

/** A circuit written for the reference simulator, and the names under which it answers. */
export interface SimulatorNetlist {
  readonly text: string;
  /** Per node: the answer's name; undefined where the node was put at 0 V. */
  readonly volts: ReadonlyMap<string, string | undefined>;
  /** Per element whose current is a question: the name of its current from a to b. */
  readonly amps: ReadonlyMap<string, string>;
}

export interface NetlistOptions {
  /** The node of each node's island that is put at 0 V. */
  readonly zero: ReadonlyMap<string, string>;
  /** Conductance that the simulator adds across every junction, S. */
  readonly gmin: number;
  /** Voltage of a node of its own, by which an answer is known from an earlier one. */
  readonly mark: number;
}

/**
 * Elementary charge over Boltzmann's constant, K/V, with the values that the simulator uses.
 *
 * Source: CODATA 2014 recommended values.
 */
const kelvinPerVolt = 1.6021766208e-19 / 1.38064852e-23;
/** 26.85 °C to a ten-thousandth: where the simulator's thermal voltage is the engine's. */
const celsius = thermalVoltage * kelvinPerVolt - 273.15;
/** Newton's method goes on until nothing moves by more than these, A and V. */
const tolerances = { reltol: 1e-9, abstol: 1e-15, vntol: 1e-12, itl1: 1000 };

/** Writes a circuit; sources that the engine finds at their limit become current sources. */
export function netlistOf(
  { elements }: Circuit,
  solution: Solution,
  { zero, gmin, mark }: NetlistOptions
): SimulatorNetlist {
  const names = new Map(
    [...zero].map(([node, root], n) => [node, node === root ? '0' : `n${String(n)}`])
  );
  const limiting = new Set(solution.limiting);
  const cards = elements.map((element, n): Cards => {
    const [a, b] = [names.get(element.a) ?? '', names.get(element.b) ?? ''];
    const fixed = limiting.has(element.id) ? solution.amps(element.id) : undefined;
    return cardsOf(element, { a, b, n: String(n), fixed });
  });
  const options = { ...tolerances, gmin, temp: celsius, tnom: celsius };
  const saved = cards.flatMap(({ saved }) => saved ?? []);
  return {
    text: `circuit
.options ${Object.entries(options)
      .map(([name, value]) => `${name}=${String(value)}`)
      .join(' ')}
Vmark mark 0 ${String(mark)}
${cards.flatMap(({ lines }) => lines).join('\n')}
.save all ${saved.join(' ')}
.op
.end
`,
    volts: new Map(
      [...names].map(([node, name]) => [node, name === '0' ? undefined : `v(${name})`])
    ),
    amps: new Map(
      elements.flatMap(({ id }, n): [string, string][] => {
        const { saved, branch } = cards[n] ?? {};
        const answer = saved === undefined ? branch : `i(${saved})`;
        return answer === undefined ? [] : [[id, answer]];
      })
    )
  };
}

interface Cards {
  readonly lines: readonly string[];
  /** The current from a to b: as a quantity to be saved, or as one that is there anyhow. */
  readonly saved?: string;
  readonly branch?: string;
}

interface Place {
  readonly a: string;
  readonly b: string;
  readonly n: string;
  readonly fixed: number | undefined;
}

function cardsOf(e: Element, { a, b, n, fixed }: Place): Cards {
  const driven = e.kind === 'current' ? e.amps : fixed;
  if (driven !== undefined) return { lines: [`I${n} ${a} ${b} ${String(driven)}`] };
  if (e.kind === 'diode') {
    const model = `IS=${String(e.saturation)} N=${String(e.ideality)} RS=${String(e.ohms)}`;
    return { lines: [`D${n} ${a} ${b} M${n}`, `.model M${n} D(${model})`], saved: `@d${n}[id]` };
  }
  if (e.kind === 'current' || (e.kind === 'switch' && !e.closed)) return { lines: [] };
  const volts = e.kind === 'source' ? e.volts : e.kind === 'motor' ? e.emf : 0;
  const emf = `V${n} ${a} ${e.ohms === 0 ? b : `m${n}`} ${String(volts)}`;
  if (e.ohms === 0) return { lines: [emf], branch: `i(v${n})` };
  const resistor = (from: string): string => `R${n} ${from} ${b} ${String(e.ohms)}`;
  const lines = volts === 0 ? [resistor(a)] : [emf, resistor(`m${n}`)];
  return { lines, saved: `@r${n}[i]` };
}
