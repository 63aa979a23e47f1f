import type { Circuit, Element } from '../../src/lib/circuit';
import { decades, drawFrom, pick, whole } from './random-numbers';
import type { Draw } from './random-numbers';

/** What a random network is made of. */
export interface NetworkOptions {
  readonly seed: number;
  readonly nodes: number;
  readonly elements: number;
  readonly kinds: readonly Element['kind'][];
  /** Share of sources that have a limit. */
  readonly limited?: number;
  /** Share of switches and sources that have 0 Ω. */
  readonly ideal?: number;
}

/** A random network with resistances from 1 mΩ to 10 MΩ. */
export function network(options: NetworkOptions): Circuit {
  const draw = drawFrom(options.seed);
  const node = (): string => String(whole(draw, 0, options.nodes - 1));
  const elements = Array.from({ length: options.elements }, (_, n): Element => {
    const a = node();
    let b = node();
    while (b === a) b = node();
    return { id: `E${String(n)}`, a, b, ...values(draw, options) } as Element;
  });
  const tie: Element = { kind: 'resistor', id: 'tie', a: '0', b: '1', ohms: 1000 };
  return { ground: '0', elements: [tie, ...elements] };
}

function values(draw: Draw, { kinds, limited = 0, ideal = 0 }: NetworkOptions): object {
  const kind = pick(draw, kinds);
  const ohms = decades(draw, -3, 7);
  if (kind === 'resistor') return { kind, ohms };
  if (kind === 'motor') return { kind, ohms: 4 + 40 * draw(), emf: 12 * (2 * draw() - 1) };
  if (kind === 'current') return { kind, amps: 0.1 * (2 * draw() - 1) };
  if (kind === 'diode') {
    const saturation = decades(draw, -20, -9);
    return {
      kind,
      saturation,
      ideality: 1 + draw(),
      ohms: draw() < 0.5 ? 0 : decades(draw, -3, 3)
    };
  }
  const bare = draw() < ideal ? 0 : ohms;
  if (kind === 'switch') return { kind, closed: draw() < 0.6, ohms: bare };
  const volts = 16 * (2 * draw() - 1);
  const limit = draw() < limited ? { limit: decades(draw, -2, 0.5) } : {};
  return { kind, volts, ohms: bare, ...limit };
}
