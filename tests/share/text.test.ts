import fc from 'fast-check';
import { crc32 as reference } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { csv, fileName, shownName, writeSvg, yardFile } from '../../src/lib/share';
import { fromBase64url, toBase64url } from '../../src/lib/share/base64url';
import { crc32 } from '../../src/lib/share/crc';
import { yardOf } from '../yard/build';
import { hostileNames } from './any';

const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('crc32(bytes)', () => {
  // The check value of CRC-32/ISO-HDLC in catalogues of CRCs; the CRC of the empty IEND chunk that ends every PNG.
  test.each([
    ['123456789', 0xcbf43926],
    ['IEND', 0xae426082],
    ['', 0]
  ])('of %j', (text, expected) => {
    expect(crc32(ascii(text))).toBe(expected);
  });

  test('is that of another implementation', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(crc32(bytes)).toBe(reference(bytes));
      }),
      { seed: 1 }
    );
  });
});

describe('toBase64url(bytes)', () => {
  // RFC 4648, section 10, in the alphabet of section 5 without padding.
  test.each([
    ['', ''],
    ['f', 'Zg'],
    ['fo', 'Zm8'],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg'],
    ['fooba', 'Zm9vYmE'],
    ['foobar', 'Zm9vYmFy']
  ])('%j is %j', (text, code) => {
    expect(toBase64url(ascii(text))).toBe(code);
    expect(fromBase64url(code)).toEqual(ascii(text));
  });

  test('has no mark that an address would change', () => {
    expect(toBase64url(new Uint8Array([0xfb, 0xff, 0xfe]))).toBe('-__-');
  });
});

describe('shownName(name)', () => {
  test.each([
    ['Quillby Quay', 'Quillby Quay'],
    ['  two\r\nlines\t', 'two lines'],
    ['\u202egnp.drawkcab\u2066', 'gnp.drawkcab'],
    ['<img src=x onerror=alert(1)>', '<img src=x onerror=alert(1)>'],
    ['👩‍🔧 Überholgleis 雨', '👩‍🔧 Überholgleis 雨'],
    ['می‌خواهم', 'می‌خواهم'],
    ['a\ud800b', 'a\ufffdb'],
    ['\u0000\u0007\u001b[31m', '[31m'],
    ['z\u0301\u0302\u0303\u0304\u0305\u0306\u0307', 'z\u0301\u0302\u0303\u0304'],
    ['\u200b\u2060', 'no name'],
    ['', 'no name']
  ])('%j is shown as %j', (name, shown) => {
    expect(shownName(name)).toBe(shown);
  });

  test('10 000 characters end at the sixtieth, never within one', () => {
    expect(shownName('x'.repeat(10_000))).toBe(`${'x'.repeat(59)}…`);
    expect(shownName('😀'.repeat(10_000))).toBe(`${'😀'.repeat(59)}…`);
  });

  test('any name: short, no controls, no turning marks; clean once is clean for good', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (name) => {
        const shown = shownName(name);
        expect([...shown].length).toBeLessThanOrEqual(60);
        expect(shown).not.toMatch(/[\p{Cc}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u);
        expect(shownName(shown)).toBe(shown);
      }),
      { numRuns: 1000, seed: 2 }
    );
  });
});

test.each([
  ['Quillby Quay, improved', 'quillby-quay-improved.svg'],
  ['../../etc/passwd', 'etc-passwd.svg'],
  ['CON', 'yard-con.svg'],
  ['', 'no-name.svg'],
  ['///', 'yard.svg'],
  ['Überholgleis 雨', 'überholgleis-雨.svg']
])('fileName(%j) is %j', (name, file) => {
  expect(fileName(name, 'svg')).toBe(file);
});

/** Reads RFC 4180 text back: quoted cells, doubled quotes, lines ended by CR LF. */
function cells(text: string): string[][] {
  const rows: string[][] = [];
  const pattern = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/gy;
  let row: string[] = [];
  for (const [, quoted, bare, end] of text.matchAll(pattern)) {
    row.push(quoted === undefined ? (bare ?? '') : quoted.replaceAll('""', '"'));
    if (end === ',') continue;
    rows.push(row);
    row = [];
  }
  return rows;
}

describe('csv(rows)', () => {
  // RFC 4180, section 2, rules 1, 2, 6 and 7.
  test('is as the standard’s examples', () => {
    expect(
      csv([
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx']
      ])
    ).toBe('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n');
    expect(csv([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csv([['aaa', 'b"bb', 'c,c']])).toBe('aaa,"b""bb","c,c"\r\n');
  });

  test.each(['=1+1', '+1', '-1', '@sum', '\t=1', '\r=1', '\n=1', ' =1', '＝1'])(
    'a text %j cannot be run as a formula',
    (text) => {
      expect(cells(csv([[text]]))).toEqual([[`'${text}`]]);
    }
  );

  test('numbers are numbers, below zero too', () => {
    expect(csv([[-5.2, 0, 7]])).toBe('-5.2,0,7\r\n');
  });

  test('any cells come back, and none begins as a formula does', () => {
    const anyCell = fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom(...hostileNames));
    fc.assert(
      fc.property(fc.array(fc.array(anyCell, { minLength: 1 }), { minLength: 1 }), (rows) => {
        const back = cells(csv(rows));
        expect(back.map((row) => row.map((cell) => cell.replace(/^'/, '')))).toEqual(
          rows.map((row) => row.map((cell) => cell.replace(/^'/, '')))
        );
        for (const cell of back.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
      }),
      { numRuns: 500, seed: 3 }
    );
  });
});

test.each(hostileNames)(
  'the name %j is text within an SVG, and cannot end its metadata',
  (name) => {
    const file = yardFile({ yard: yardOf(), name });
    const [, inside = ''] =
      /<metadata id="ohmyard">(.*)<\/metadata><rect\/><\/svg>$/s.exec(
        writeSvg('<svg><rect/></svg>', file)
      ) ?? [];
    expect(inside).toMatch(/^[ -~]+$/);
    expect(inside).not.toMatch(/[<>]|&(?!amp;|lt;|gt;)/);
  }
);
