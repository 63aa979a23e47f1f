import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { solve } from '../../src/lib/circuit';
import type { Circuit } from '../../src/lib/circuit';
import { Simulator } from '../circuit/simulator';
import { zeroOf } from '../circuit/simulator-compare';
import { netlistOf } from '../circuit/simulator-netlist';
import { processorTime } from './micros';

/** An open contact as the reference simulator bears it: it has no connection that can be altered. */
const openOhms = 1e12;

/** A yard as text, with every contact a resistor, and the names of some of them. */
export interface Deck {
  readonly text: string;
  readonly contacts: readonly string[];
  readonly node: string;
}

export function deckOf(circuit: Circuit, ids: readonly string[]): Deck {
  const elements = circuit.elements.map((e) =>
    e.kind === 'switch' && !e.closed ? { ...e, closed: true, ohms: openOhms } : e
  );
  const all = { ...circuit, elements };
  const netlist = netlistOf(all, solve(all), { zero: zeroOf(all), gmin: 1e-12, mark: 1 });
  const node = netlist.volts.get('tag 0') ?? '';
  return {
    text: netlist.text.replace(/^\.save.*$/m, `.save v(mark) ${node}`),
    contacts: ids.map((id) => `r${String(elements.findIndex((e) => e.id === id))}`),
    node
  };
}

const sweep = (contact: string, points: number): string =>
  `dc ${contact} 0.02 ${String(0.02 + points)} 1`;

/** How many flips and how many points of a sweep are timed: multiples of 100. */
export interface Counts {
  readonly flips: number;
  readonly points: number;
}

/** Milliseconds of processor time that the native program takes for a file. */
function program(file: string): number {
  const command = `TIMEFORMAT='%U %S'; time ngspice -b '${file}' > /dev/null 2>&1`;
  const { stderr } = spawnSync('bash', ['-c', command], { encoding: 'utf8' });
  const [user = NaN, system = NaN] = stderr.trim().split(' ').map(Number);
  return (user + system) * 1000;
}

/** The native program: µs for altering a contact and solving, and for a point of its own sweep. */
export function native(deck: Deck, counts: Counts): { flip: number; point: number } | undefined {
  if (spawnSync('ngspice', ['--version']).status !== 0) return undefined;
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const file = join(folder, 'yard.cir');
  const run = (commands: string): number => {
    const control = `.control\nset noprintscale\n${commands}\nquit\n.endc\n.end\n`;
    writeFileSync(file, deck.text.replace(/^\.op\n\.end\n/m, control));
    return Math.min(program(file), program(file), program(file));
  };
  const loop = (count: number): string => {
    const altered = (n: number): string =>
      `alter ${deck.contacts[n % deck.contacts.length] ?? ''} = ${n % 2 === 0 ? '0.02' : '1e12'}\nop`;
    const lines = Array.from({ length: 10 }, (_, n) => altered(n)).join('\n');
    return `op\nrepeat ${String(count / 10)}\n${lines}\ndestroy all\nend`;
  };
  const per = (of: (count: number) => string, count: number): number =>
    ((run(of(count)) - run(of(count / 10))) / (0.9 * count)) * 1000;
  const flip = per(loop, counts.flips);
  const point = per((count) => sweep(deck.contacts[0] ?? '', count), counts.points);
  rmSync(folder, { recursive: true });
  return { flip, point };
}

/** The one for the web: µs for a yard from its text, and for a point of its own sweep. */
export async function web(deck: Deck, { points }: Counts): Promise<{ run: number; point: number }> {
  const simulator = new Simulator();
  await simulator.start();
  const run = async (text: string): Promise<number> => {
    const times: number[] = [];
    for (let round = 0; round < 3; round++) {
      const start = processorTime();
      const answer = await simulator.operatingPoint(text, 1);
      times.push(processorTime() - start);
      if (answer === undefined) throw new Error('The reference simulator has no answer.');
    }
    return Math.min(...times);
  };
  const swept = (count: number): string =>
    deck.text.replace(/^\.op$/m, `.${sweep(deck.contacts[0] ?? '', count)}`);
  const [few, many] = [await run(swept(points / 10)), await run(swept(points))];
  return { run: (await run(deck.text)) * 1000, point: ((many - few) / (0.9 * points)) * 1000 };
}
