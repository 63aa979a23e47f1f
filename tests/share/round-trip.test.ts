import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  fileText,
  linkFragment,
  open,
  readLink,
  readPng,
  readSvg,
  readText,
  writePng,
  writeSvg,
  yardFile,
  type YardFile
} from '../../src/lib/share';
import { anyFile, anyFullYard, quay } from './any';
import { pixel } from './png';
import { yardOf } from '../yard/build';

const svg =
  '<?xml version="1.0"?>\n<!-- a > b --><svg xmlns="http://www.w3.org/2000/svg" data-x="a>b"><rect/></svg>';

const ways: readonly [
  way: string,
  write: (file: YardFile) => string | Uint8Array,
  read: (written: never) => YardFile
][] = [
  ['link', (file) => `https://yard.example/yard${linkFragment(file)}`, readLink],
  ['fragment', linkFragment, readLink],
  ['file', fileText, readText],
  ['SVG', (file) => writeSvg(svg, file), readSvg],
  ['PNG', (file) => writePng(pixel(), file), readPng]
];

test.each(ways)(
  'any valid yard → %s → the same yard, and the same bytes again',
  (_, write, read) => {
    fc.assert(
      fc.property(anyFile, (file) => {
        const written = write(file);
        const back = read(written as never);
        expect(back).toEqual(file);
        expect(write(back)).toEqual(written);
        expect(open(written)).toEqual({ ok: file });
      }),
      { numRuns: 120, seed: 5 }
    );
  }
);

test('what is written is what differs from the defaults, and nothing else', () => {
  const text = fileText(yardFile({ yard: yardOf({ deckRoads: 9, supply: { volts: 16 } }) }));
  expect(JSON.parse(text)).toEqual({
    format: 'ohmyard',
    version: 1,
    yard: { deckRoads: 9, supply: { volts: 16 } }
  });
});

test('no key can be left out of what is written', () => {
  const paths = (value: unknown, path: string[] = []): string[][] =>
    typeof value !== 'object' || value === null
      ? []
      : Object.entries(value).flatMap(([key, inside]) => [
          [...path, key],
          ...paths(inside, [...path, key])
        ]);
  fc.assert(
    fc.property(anyFullYard, (yard) => {
      const file = yardFile({ yard });
      const written = JSON.parse(fileText(file)) as { yard: Record<string, unknown> };
      for (const path of paths(written.yard)) {
        const copy = structuredClone(written);
        const last = path.pop() as string;
        const holder = path.reduce<Record<string, unknown>>(
          (inside, key) => inside[key] as Record<string, unknown>,
          copy.yard
        );
        if (Array.isArray(holder)) continue;
        Reflect.deleteProperty(holder, last);
        const opened = open(JSON.stringify(copy));
        expect(opened).not.toEqual({ ok: file });
      }
    }),
    { numRuns: 40, seed: 6 }
  );
});

test('the same yard gives the same bytes, in whatever order its values were given', () => {
  const one = yardFile({
    yard: yardOf({ deckRoads: 7, return: 'ring', supply: { volts: 9, ohms: 1 } })
  });
  const other = yardFile({
    yard: yardOf({ supply: { ohms: 1, volts: 9 }, return: 'ring', deckRoads: 7 })
  });
  expect(fileText(one)).toBe(fileText(other));
  expect(linkFragment(one)).toBe(linkFragment(other));
});

test.each<[what: string, file: YardFile, most: number]>([
  ['the 5+4 demo yard under its own name', quay, 200],
  [
    '24+12, with a name as long as may be',
    yardFile({ yard: yardOf({ name: 'W'.repeat(60), deckRoads: 24, stablingRoads: 12 }) }),
    200
  ]
])('the fragment of %s is short', (_, file, most) => {
  expect(linkFragment(file).length).toBeLessThanOrEqual(most);
});

test('no yard with a moment of it makes a fragment of more than 2000 characters', () => {
  fc.assert(
    fc.property(anyFile, (file) => {
      expect(linkFragment(file).length).toBeLessThanOrEqual(2000);
    }),
    { numRuns: 200, seed: 7 }
  );
});

test('a picture holds one yard: a second one takes the place of the first', () => {
  const second = yardFile({ yard: yardOf({ deckRoads: 3 }) });
  expect(writeSvg(writeSvg(svg, quay), second)).toBe(writeSvg(svg, second));
  expect(writePng(writePng(pixel(), quay), second)).toEqual(writePng(pixel(), second));
});

test('a picture without a yard is the same picture but for the yard', () => {
  const drawn = writeSvg(svg, quay);
  expect(drawn.replace(/<metadata.*<\/metadata>/, '')).toBe(svg);
  expect(() => writeSvg('<p>no picture</p>', quay)).toThrow(RangeError);
});

test('a link survives what letters do to it: broken lines, blanks, a full stop behind it', () => {
  const link = `https://yard.example/yard${linkFragment(quay)}`;
  const broken = link.replace(/(.{40})/g, '$1\r\n  ');
  expect(open(broken)).toEqual({ ok: quay });
  expect(open(`Have a look: ${link}. Yours`)).toEqual({ ok: quay });
  expect(open(`<${link}>`.slice(1))).toEqual({ ok: quay });
});

test('an SVG survives what other programs do to it: prefix, order, CDATA, numbered marks', () => {
  const text = fileText(quay);
  const numbered = text.replace(/["{]/g, (mark) => `&#x${mark.charCodeAt(0).toString(16)};`);
  for (const inside of [
    `<svg:metadata class='a' id='ohmyard' >${numbered}</svg:metadata>`,
    `<metadata id = "ohmyard"><![CDATA[${text}]]></metadata>`,
    `<metadata id="ohmyard">${text.replaceAll('"', '&quot;')}</metadata>`
  ]) {
    expect(open(`<svg:svg><title>x</title>${inside}</svg:svg>`)).toEqual({ ok: quay });
  }
});

test('a text saved with a byte order mark, or as UTF-16, opens', () => {
  const utf16 = Buffer.from(`\ufeff${fileText(quay)}`, 'utf16le');
  expect(open(new Uint8Array(utf16))).toEqual({ ok: quay });
  expect(open(`\ufeff${fileText(quay)}`)).toEqual({ ok: quay });
});
