import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { namesOf, wiresOf } from '../../src/lib/book';
import { bookDrawings } from '../../src/lib/draw/bookDrawings';
import { circuitStrip } from '../../src/lib/draw/circuitStrip';
import { svgOf, type Shape } from '../../src/lib/draw/drawing';
import { lampStrips } from '../../src/lib/draw/lampStrip';
import { sheetsOf, type Strip } from '../../src/lib/draw/strips';
import type { Yard, YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

type Text = Extract<Shape, { kind: 'text' }>;
interface Box {
  readonly text: string;
  readonly west: number;
  readonly east: number;
  readonly top: number;
  readonly low: number;
}

/** Width of a figure or a capital for its height, in a usual sans-serif. Source: common practice. */
const LETTER = 0.58;

function boxOf({ x, y, size, text, anchor = 'start' }: Text): Box {
  const width = size * LETTER * text.length;
  const west = x - { start: 0, middle: width / 2, end: width }[anchor];
  return { text, west, east: west + width, top: y - size * 0.72, low: y };
}

const textsOf = (strip: Strip): readonly Text[] =>
  strip.shapes.flatMap(({ shape }) => (shape.kind === 'text' && shape.text ? [shape] : []));

const strips = (yard: Yard): readonly Strip[] => [circuitStrip(yard), ...lampStrips(yard)];

const overlaps = (boxes: readonly Box[]): readonly string[] =>
  boxes.flatMap((a, index) =>
    boxes
      .slice(index + 1)
      .filter((b) => a.west < b.east && b.west < a.east && a.top < b.low && b.top < a.low)
      .map((b) => `${a.text} on ${b.text}`)
  );

/** Words that stand in a window and reach out of it. */
const cutOff = (strip: Strip): readonly string[] =>
  sheetsOf(strip)
    .flatMap(({ shapes }) => shapes.filter((shape) => shape.kind === 'window'))
    .flatMap(({ from, width, shapes }) =>
      shapes
        .filter((shape) => shape.kind === 'text')
        .map((text) => ({ x: text.x, ...boxOf(text) }))
        .filter(({ x }) => x > from.x && x < from.x + width)
        .filter(({ west, east }) => west < from.x || east > from.x + width)
        .map(({ text }) => text)
    );

const anyBookYard: fc.Arbitrary<Yard> = fc
  .record({
    deckRoads: fc.integer({ min: 1, max: 40 }),
    stablingRoads: fc.integer({ min: 0, max: 20 }),
    return: fc.constantFrom('chain' as const, 'ring' as const, 'star' as const),
    runningRoad: fc.constantFrom('direct' as const, 'interlocked' as const),
    lamps: fc.constantFrom('none' as const, 'own' as const, 'track' as const)
  })
  .map((input) =>
    yardOf({ ...input, stablingRoads: Math.min(input.stablingRoads, input.deckRoads) })
  );

describe('the circuit on paper', () => {
  test('for any yard: every wire of the schedule has its number, every part its name, on sheets that fit the page', () => {
    fc.assert(
      fc.property(anyBookYard, (yard) => {
        const all = strips(yard);
        const words = new Set(all.flatMap(textsOf).map(({ text }) => text));
        const missing = wiresOf(yard).filter(({ number }) => !words.has(String(number)));
        expect(missing).toEqual([]);
        expect([...namesOf(yard).values()].filter((name) => !words.has(name))).toEqual([]);
        for (const strip of all) expect(cutOff(strip)).toEqual([]);
        for (const { width, height } of all.flatMap(sheetsOf)) {
          // Source: ISO 216 (A4, 210 mm wide); Letter, 11 in high; margins of 12 mm.
          expect(width).toBeLessThanOrEqual(210 - 24);
          expect(height).toBeLessThanOrEqual(11 * 25.4 - 24);
        }
      }),
      { numRuns: 25, seed: 11 }
    );
  });

  test.each<YardInput>([
    { deckRoads: 5, stablingRoads: 4, lamps: 'own', colours: { scheme: 'NEM 605' } },
    { deckRoads: 24, stablingRoads: 12, lamps: 'track', return: 'ring' },
    { deckRoads: 12, stablingRoads: 4, return: 'star', runningEnds: 'both' },
    { deckRoads: 4, stablingRoads: 2, switching: 'pushes', second: { roads: ['C', '1'] } },
    { deckRoads: 5, stablingRoads: 3, switching: 'rotary', lamps: 'track' }
  ])('of %j: no words stand on others', (input) => {
    for (const strip of strips(yardOf(input))) {
      expect(overlaps(textsOf(strip).map(boxOf)), strip.title).toEqual([]);
    }
  });

  test('a wire that goes on is named at both sides of the cut, with the part where it goes', () => {
    const yard = yardOf({ deckRoads: 5, stablingRoads: 4 });
    const strip = circuitStrip(yard);
    const sheet = sheetsOf(strip)[0];
    const outside = (sheet?.shapes ?? []).filter((shape) => shape.kind === 'text');
    const at = (anchor: Text['anchor']) =>
      outside.filter((text) => text.anchor === anchor).map(({ text }) => text);
    const [east, west] = [at('start'), at('end')];
    expect(east[0]).toBe('part 2');
    expect(west[0]).toBe('part 1');
    expect(east.slice(1)).toEqual(west.slice(1));
    expect(east.length).toBeGreaterThan(2);
  });

  test('two controllers are both drawn, each with the wire to its first road', () => {
    const yard = yardOf({ deckRoads: 3, second: { roads: ['B'] } });
    const words = textsOf(circuitStrip(yard)).map(({ text }) => text);
    expect(words.filter((text) => /^−G/.test(text))).toEqual(['−G1', '−G2']);
    const second = wiresOf(yard).find(({ run }) => run === 'feed 2 wire');
    expect(words).toContain(String(second?.number));
  });
});

test('names of any kind leave the drawing well-formed XML', () => {
  const yard = yardOf({ deckRoads: 2, name: 'A <b> & "c" \u0000\ud800', names: { A: '<&>' } });
  const [{ whole } = { whole: undefined }] = bookDrawings('panel', yard);
  const svg = whole ? svgOf(whole) : '';
  expect(svg).toContain('A &lt;b&gt; &amp; &quot;c&quot; \ufffd\ufffd');
  expect(svg.replace(/<[^<>]*>/g, '')).not.toMatch(/[<>]|&(?!(amp|lt|gt|quot);)/);
});
