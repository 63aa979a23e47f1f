import fc from 'fast-check';
import { deflateRawSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import {
  fileText,
  linkFragment,
  open,
  openFile,
  writePng,
  writeSvg,
  yardFile,
  type Opened
} from '../../src/lib/share';
import { crc32 } from '../../src/lib/share/crc';
import { inflated, TooMuchError } from '../../src/lib/share/inflate';
import {
  MAX_DEPTH,
  MAX_FILE_BYTES,
  MAX_LINK,
  MAX_LIST,
  MAX_TEXT,
  MAX_VALUES
} from '../../src/lib/share/limits';
import { MAX_STABLING, MAX_STORAGE } from '../../src/lib/yard';
import { thrown, yardOf } from '../yard/build';
import { anyFile, quay } from './any';
import { chunk, pixel } from './png';

const svg = '<svg xmlns="http://www.w3.org/2000/svg"><rect width="1" height="1"/></svg>';

/** A link with these bytes for its yard, its length and check sum in order. */
function linkOf(yard: Uint8Array, layout = 1): string {
  const head = Buffer.alloc(7);
  head.writeUInt8(layout);
  head.writeUInt16BE(yard.length, 1);
  head.writeUInt32BE(crc32(yard), 3);
  return `#yard=${Buffer.concat([head, yard]).toString('base64url')}`;
}

const linkOfText = (text: string): string => linkOf(deflateRawSync(text));
const bytesOf = (link: string): Buffer => Buffer.from(link.slice('#yard='.length), 'base64url');
const fileWith = (change: object): string =>
  JSON.stringify({ ...(JSON.parse(fileText(quay)) as object), ...change });

/** Values deeper in one another than may be. */
const deep = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);

/** What was opened is a whole yard within its limits, or words that say why not. */
function mustBeSound(opened: Opened): void {
  if ('wrong' in opened) {
    expect(opened.wrong.length).toBeGreaterThan(10);
    expect(opened.wrong.length).toBeLessThan(2000);
    // A message shows what it met; no mark in it may turn the text or break its lines at will.
    expect(opened.wrong).not.toMatch(/[\u202a-\u202e\u2066-\u2069]|(?!\n)\p{Cc}|\p{Cs}/u);
    return;
  }
  const { yard } = opened.ok;
  expect(yard.deckRoads).toBeLessThanOrEqual(MAX_STORAGE);
  expect(yard.stablingRoads).toBeLessThanOrEqual(MAX_STABLING);
  expect(yardOf(JSON.parse(JSON.stringify(yard)))).toEqual(yard);
}

describe('open(input) says in words', () => {
  const link = linkFragment(quay);
  const changedAt = (at: number) =>
    link.slice(0, at) + (link[at] === 'A' ? 'B' : 'A') + link.slice(at + 1);
  const png = writePng(pixel(), quay);
  const spoiltPng = png.map((byte, at) => (at === png.length - 20 ? byte ^ 1 : byte));

  test.each<[what: string, input: string | Uint8Array, why: string, words: RegExp]>([
    ['nothing', '', 'empty', /nothing in it/],
    ['blanks', ' \n\t', 'empty', /nothing in it/],
    ['no bytes', new Uint8Array(), 'empty', /nothing in it/],
    ['a letter', 'Dear friend, come and see my yard.', 'foreign', /holds no yard/],
    ['another page', 'https://yard.example/#top', 'foreign', /holds no yard/],
    ['bytes of anything', new Uint8Array([1, 0xff, 0xfe, 0x80]), 'foreign', /neither text nor/],
    ['a cut link', link.slice(0, -9), 'cut', /breaks off/],
    ['a link with nothing', '#yard=', 'cut', /breaks off/],
    ['a changed link', changedAt(30), 'changed', /check sum/],
    ['a link of another layout', linkOf(bytesOf(link).subarray(7), 9), 'newer', /layout 9/],
    ['a link that is far too long', `#yard=${'A'.repeat(MAX_LINK + 1)}`, 'too big', /too long/],
    ['a link whose bytes are no yard', linkOf(Buffer.from([7, 7, 7])), 'damaged', /damaged/],
    [
      'a link whose text is none',
      linkOf(deflateRawSync(Buffer.from([0xff, 0xff]))),
      'damaged',
      /damaged/
    ],
    ['a bomb in a link', linkOf(deflateRawSync(Buffer.alloc(5_000_000))), 'too much', /unfolds/],
    ['a file that breaks off', fileText(quay).slice(0, 60), 'cut', /breaks off/],
    ['a damaged file', fileText(quay).replace(':', ';'), 'damaged', /not sound JSON/],
    ['other JSON', '{"name":"someone"}', 'foreign', /"format": "ohmyard"/],
    ['a list', '[1,2]', 'foreign', /no yard of ours/],
    ['a newer version', fileWith({ version: 7 }), 'newer', /version 7, newer than this page \(1\)/],
    [
      'a version that is none',
      fileWith({ version: 'x' }),
      'does not fit',
      /version: met "x", allowed: 1/
    ],
    [
      '41 roads',
      fileWith({ yard: { deckRoads: 41 } }),
      'does not fit',
      /yard › deckRoads: met 41, allowed: 1 to 40 deck roads\./
    ],
    ['an unknown key', fileWith({ owner: 'me' }), 'does not fit', /owner: met the unknown key/],
    [
      'a scene of another yard',
      fileWith({ scene: { switches: { Z: true } } }),
      'does not fit',
      /switches › Z/
    ],
    [
      'an edit of no wire',
      fileWith({ scene: { edits: [{ off: 'the moon' }] } }),
      'does not fit',
      /edits: met 'the moon'/
    ],
    [
      'many things wrong',
      fileWith({ yard: { deckRoads: 0, return: 'x', toggles: 1, roadLengthMm: 1 } }),
      'does not fit',
      /And 1 more\./
    ],
    ['deep text', fileWith({ scene: JSON.parse(deep(MAX_DEPTH)) }), 'too much', /far more than/],
    [
      'a long list',
      fileWith({ scene: { edits: Array(MAX_LIST + 1).fill(0) } }),
      'too much',
      /far more than/
    ],
    [
      'many values',
      fileWith({
        scene: Object.fromEntries(Array.from({ length: MAX_VALUES }, (_, i) => [`k${i}`, 0]))
      }),
      'too much',
      /far more than/
    ],
    ['long text', fileWith({ name: 'n'.repeat(MAX_TEXT) }), 'too much', /far longer/],
    ['a bottomless text', '['.repeat(MAX_TEXT), 'cut', /breaks off/],
    ['a plain SVG', svg, 'no yard', /no yard inside/],
    ['a cut SVG', writeSvg(svg, quay).slice(0, 120), 'cut', /breaks off/],
    [
      'an SVG cut after its yard began',
      `${svg.slice(0, -6)}<metadata id="ohmyard">{"for`,
      'cut',
      /breaks off/
    ],
    [
      'an SVG with a damaged yard',
      writeSvg(svg, quay).replace('version', 'version"'),
      'damaged',
      /not sound/
    ],
    ['a web page', '<!doctype html><p>Hello</p>', 'foreign', /holds no yard/],
    ['a plain PNG', pixel(), 'no yard', /no yard inside/],
    ['a cut PNG', png.subarray(0, png.length - 30), 'cut', /breaks off/],
    ['the start of a PNG', png.subarray(0, 8), 'cut', /breaks off/],
    ['a changed PNG', spoiltPng, 'changed', /check sum/],
    [
      'a PNG with a book inside',
      pixel(chunk('tEXt', Buffer.from(`ohmyard\0${' '.repeat(MAX_TEXT)}`))),
      'too much',
      /far more text/
    ],
    [
      'a PNG in shreds',
      pixel(...Array.from({ length: 20_001 }, () => chunk('tEXt', Buffer.alloc(0)))),
      'too much',
      /too many pieces/
    ]
  ])('%s', (_, input, why, words) => {
    const opened = open(input);
    expect(opened).toMatchObject({ why, wrong: expect.stringMatching(words) as string });
    mustBeSound(opened);
  });

  test('more than 50 MB, without looking inside', () => {
    const opened = open(new Uint8Array(MAX_FILE_BYTES + 1), 'holiday.mov');
    expect(opened).toEqual({
      why: 'too big',
      wrong: 'holiday.mov: This is 51 MB. At most 50 MB can be opened.'
    });
    expect(open(new Uint8Array(MAX_FILE_BYTES))).toHaveProperty('why', 'foreign');
  });

  test('a picked file’s faults: too big to read, or not to be read', async () => {
    const unread = () => Promise.reject(new Error('gone'));
    const large = { name: 'holiday.mov', size: MAX_FILE_BYTES + 1, arrayBuffer: unread };
    expect(await openFile(large)).toMatchObject({ why: 'too big' });
    expect(await openFile({ ...large, size: 10 })).toEqual({
      why: 'damaged',
      wrong: 'holiday.mov: This could not be read. Ask for it again.'
    });
    const bytes = new TextEncoder().encode(fileText(quay));
    const sound = { name: 'q', size: bytes.length, arrayBuffer: async () => bytes.buffer };
    expect(await openFile(sound)).toEqual({ ok: quay });
  });

  test('which file it was, its name made harmless', () => {
    expect(open('', 'a\u202egnp.\n<b>')).toMatchObject({
      wrong: 'agnp. <b>: There is nothing in it.'
    });
  });
});

describe('a bomb is not unfolded', () => {
  test.each([1e6, 1e7, 1e8])('of %i bytes: it stops within 66 KB of the bound', (size) => {
    const error = thrown(() => inflated(deflateRawSync(Buffer.alloc(size)), MAX_TEXT));
    expect(error).toBeInstanceOf(TooMuchError);
    expect((error as TooMuchError).bytes).toBeLessThanOrEqual(MAX_TEXT + 64 * 1032);
  });

  test('what is just within the bound comes out whole', () => {
    const bytes = new Uint8Array(MAX_TEXT).fill(97);
    expect(inflated(deflateRawSync(bytes), MAX_TEXT)).toEqual(bytes);
  });
});

/** A few bytes changed, taken out, or put in. */
const anyHarm = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
    byte: fc.nat(255),
    how: fc.constantFrom('change' as const, 'take' as const, 'put' as const, 'cut' as const)
  }),
  { minLength: 1, maxLength: 4 }
);
type Harm = typeof anyHarm extends fc.Arbitrary<infer H> ? H : never;

function harmed(bytes: Uint8Array, harm: Harm): Uint8Array {
  return harm.reduce<Uint8Array>((now, { at, byte, how }) => {
    const place = Math.floor(at * now.length);
    if (how === 'cut') return now.subarray(0, place);
    const rest = now.subarray(how === 'put' ? place : place + 1);
    return new Uint8Array(
      Buffer.concat(
        [now.subarray(0, place), how === 'take' ? [] : [byte], rest].map((part) =>
          Buffer.from(part)
        )
      )
    );
  }, bytes);
}

const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
const files = fc.sample(anyFile, { numRuns: 60, seed: 3 });
const bytes = (value: string): Uint8Array => new TextEncoder().encode(value);

/** What is harmed: the link as one types it, its bytes under a fresh check sum, and each kind of file. */
const targets = fc.constantFrom(
  ...files.flatMap((file): [make: (harm: Harm) => string | Uint8Array][] => {
    const link = linkFragment(file);
    const json = bytes(fileText(file));
    const svgBytes = bytes(writeSvg(svg, file));
    const png = writePng(pixel(), file);
    const payload = bytesOf(link).subarray(7);
    return [
      [(harm) => text(harmed(bytes(link), harm))],
      [(harm) => linkOf(harmed(payload, harm))],
      [(harm) => linkOfText(text(harmed(json, harm)))],
      [(harm) => harmed(json, harm)],
      [(harm) => harmed(svgBytes, harm)],
      [(harm) => harmed(png, harm)]
    ];
  })
);

test('10 000 harmed links and files: a sound yard, or words', () => {
  let opened = 0;
  fc.assert(
    fc.property(targets, anyHarm, ([make], harm) => {
      const result = open(make(harm));
      if ('ok' in result) opened++;
      mustBeSound(result);
    }),
    { numRuns: 10_000, seed: 11 }
  );
  expect(opened).toBeGreaterThan(0);
  expect(opened).toBeLessThan(5000);
});

test('any text and any bytes at all: a sound yard, or words', () => {
  const anyText = fc.oneof(fc.string({ unit: 'binary' }), fc.json(), fc.json().map(linkOfText));
  const anyBytes = fc.uint8Array({ maxLength: 200 });
  const behindHead = anyBytes.map((rest) => new Uint8Array([...pixel().subarray(0, 8), ...rest]));
  fc.assert(
    fc.property(fc.oneof(anyText, anyBytes, behindHead), (input) => {
      mustBeSound(open(input));
    }),
    { numRuns: 2000, seed: 12 }
  );
});

test('keys that programs trip over harm nothing', () => {
  for (const key of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
    const inside = `{"format":"ohmyard","version":1,"yard":{"${key}":{"deckRoads":3}}}`;
    mustBeSound(open(inside));
    mustBeSound(open(`{"format":"ohmyard","version":1,"yard":{},"${key}":{"x":1}}`));
    mustBeSound(
      open(`{"format":"ohmyard","version":1,"yard":{},"scene":{"switches":{"${key}":true}}}`)
    );
  }
  expect(({} as { deckRoads?: number }).deckRoads).toBeUndefined();
});

test('a file is not opened by its name: what is inside counts', () => {
  expect(open(fileText(quay), 'picture.png')).toEqual({ ok: quay });
  expect(yardFile(quay)).toEqual(quay);
});
