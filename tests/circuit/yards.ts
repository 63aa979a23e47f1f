import type { Circuit, Element } from '../../src/lib/circuit';
import { contacts, railOhmsPerMetre, wireOhmsPerMetre } from '../../src/lib/tables';
import { M, R, S } from './build';
import { drawFrom, pick, whole } from './random-numbers';
import type { Draw } from './random-numbers';

/** How a yard is built and which scene it is in. */
export interface YardOptions {
  readonly seed: number;
  readonly deck: number;
  readonly stabling: number;
  /** A lamp on the second pole of every toggle, on a supply of its own. */
  readonly lamps?: boolean;
  readonly return?: 'chain' | 'ring' | 'star';
  /** Share of stabling roads that the deck faces at this moment; 0.3 unless given. */
  readonly aligned?: number;
  /** Random wire faults: breaks, shorts, bad contacts. */
  readonly faults?: number;
}

const wire = (metres: number): number => wireOhmsPerMetre('24/0.2') * metres;
/** The red LED of the tables: 2.0 V at 10 mA. */
const led = { saturation: 1.587594e-19, ideality: 2, ohms: 0 };

/** A whole yard, its controller between `feed` and `0`, in a random scene. */
export function yard(options: YardOptions): Circuit {
  const draw = drawFrom(options.seed);
  const volts = pick(draw, [-12, -6, 3, 8, 12]);
  const elements: Element[] = [
    { kind: 'source', id: 'controller', a: 'feed', b: '0', volts, ohms: 0.5, limit: 1.5 },
    R('feed wire', ['feed', 'tag 0'], wire(2)),
    ...returns(options)
  ];
  for (let n = 0; n < options.deck; n++) elements.push(...deckRoad(draw, n));
  for (let n = 0; n < options.stabling; n++) elements.push(...stablingRoad(draw, n, options));
  if (options.lamps) elements.push(...lamps(draw, options));
  for (let n = 0; n < (options.faults ?? 0); n++) spoil(draw, elements, n);
  return { ground: '0', elements };
}

const name = (n: number): string => String(n);

function returns({ deck, stabling, return: way = 'chain' }: YardOptions): Element[] {
  const roads = deck + stabling;
  if (way === 'star') {
    return Array.from({ length: roads }, (_, n) =>
      R(`home ${name(n)}`, [`back ${name(n)}`, '0'], wire(3))
    );
  }
  const hops = Array.from({ length: roads - 1 }, (_, n) =>
    R(`link ${name(n + 1)}`, [`back ${name(n + 1)}`, `back ${name(n)}`], wire(0.3))
  );
  const home = R('home', ['back 0', '0'], wire(2));
  const close = R('close', [`back ${name(roads - 1)}`, '0'], wire(3));
  return way === 'ring' && roads > 1 ? [home, ...hops, close] : [home, ...hops];
}

/** A road from its tag to the common return: toggle, wire, rails, perhaps a loco, wire. */
function road(draw: Draw, n: number, closed: boolean): Element[] {
  const r = name(n);
  const rail = railOhmsPerMetre(100);
  const elements = [
    R(`hop ${r}`, [`tag ${r}`, `tag ${name(n + 1)}`], wire(0.3)),
    S(`toggle ${r}`, [`tag ${r}`, `on ${r}`], contacts.toggle.ohms, closed),
    R(`out ${r}`, [`on ${r}`, `plug ${r}`], wire(1 + draw())),
    R(`rail ${r}`, [`feed rail ${r}`, `at ${r}`], rail * draw()),
    R(`drop ${r}`, [`return rail ${r}`, `back ${r}`], wire(0.5))
  ];
  if (draw() < 0.7)
    elements.push(M(`loco ${r}`, [`at ${r}`, `return rail ${r}`], 12 + 20 * draw(), 0));
  return elements;
}

function deckRoad(draw: Draw, n: number): Element[] {
  const r = name(n);
  const contact = S(`pin ${r}`, [`plug ${r}`, `feed rail ${r}`], contacts['plug contact'].ohms);
  return [...road(draw, n, draw() < 0.5), contact];
}

/** A fixed road beyond the deck; where the deck faces it, its rails are joined to a deck road's. */
function stablingRoad(draw: Draw, n: number, { deck, aligned = 0.3 }: YardOptions): Element[] {
  const at = deck + n;
  const faces = name(n % deck);
  const joined = draw() < aligned;
  const joint = contacts['aligned joint'].ohms;
  const r = name(at);
  return [
    ...road(draw, at, draw() < 0.5),
    S(
      `interlock ${r}`,
      [`plug ${r}`, `feed rail ${r}`],
      contacts['micro-switch'].ohms,
      draw() < 0.8
    ),
    ...(joined
      ? [
          R(`joint f ${r}`, [`feed rail ${faces}`, `feed rail ${r}`], joint),
          R(`joint r ${r}`, [`return rail ${faces}`, `return rail ${r}`], joint)
        ]
      : [])
  ];
}

function lamps(draw: Draw, { deck, stabling }: YardOptions): Element[] {
  const elements: Element[] = [
    { kind: 'source', id: 'lamp supply', a: 'lamp +', b: 'lamp -', volts: 12, ohms: 0.2 }
  ];
  for (let n = 0; n < deck + stabling; n++) {
    const r = name(n);
    elements.push(
      S(`pole ${r}`, ['lamp +', `lit ${r}`], contacts.toggle.ohms, draw() < 0.5),
      R(`dropper ${r}`, [`lit ${r}`, `lamp ${r}`], 1000),
      { kind: 'diode', id: `lamp ${r}`, a: `lamp ${r}`, b: 'lamp -', ...led }
    );
  }
  return elements;
}

/** One fault: a broken wire, a short between two points, or a contact gone bad. */
function spoil(draw: Draw, elements: Element[], n: number): void {
  const at = whole(draw, 1, elements.length - 1);
  const element = elements[at];
  if (element === undefined) return;
  const fault = draw();
  if (fault < 0.3) elements[at] = { ...element, b: `broken ${name(n)}` };
  else if (fault < 0.6) {
    const other = pick(draw, elements);
    const ends: [string, string] = [element.a, other.b];
    if (ends[0] !== ends[1]) elements.push(R(`short ${name(n)}`, ends, 0.001 + 0.05 * draw()));
  } else if (element.kind === 'resistor' || element.kind === 'switch') {
    elements[at] = { ...element, ohms: element.ohms * 10 ** (4 * draw()) };
  }
}
