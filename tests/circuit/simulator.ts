import { Simulation } from 'eecircuit-engine';

/** What the reference simulator says of a circuit, by name: V and A. */
export type Answer = ReadonlyMap<string, number>;

/** The reference simulator, a general-purpose one for electronic circuits; tests alone use it. */
export class Simulator {
  private readonly simulation = new Simulation();

  async start(): Promise<void> {
    await this.simulation.start();
  }

  /** The operating point of a netlist; undefined when there is none or it is an earlier one's. */
  async operatingPoint(text: string, mark: number): Promise<Answer | undefined> {
    this.simulation.setNetList(text);
    const result = await this.simulation.runSim();
    if (result.dataType !== 'real') return undefined;
    const answer = new Map(result.data.map(({ name, values }) => [name, values[0] ?? NaN]));
    return answer.get('v(mark)') === mark ? answer : undefined;
  }
}
