import { deflateRawSync } from 'node:zlib';
import { walkFragment } from '../../src/lib/walk';
import { crc32 } from '../../src/lib/share/crc';
import { chunk, pixel } from '../share/png';
import { sampleFile, sampleWalk } from './sample';

/** Texts which a page that took them for markup, an address or code would act on. */
export const vectors = [
  '<script>globalThis.hit = 1</script>',
  '</script><script>globalThis.hit = 1</script>',
  '<img src=x onerror="globalThis.hit = 1">',
  '<svg onload="globalThis.hit = 1">',
  '<svg><script>globalThis.hit = 1</script></svg>',
  '<body onpageshow="globalThis.hit = 1">',
  '<details open ontoggle="globalThis.hit = 1">x</details>',
  '<iframe srcdoc="<script>parent.hit = 1</script>">',
  '<iframe src="javascript:parent.hit = 1">',
  '<object data="//evil.example/x.svg">',
  '<embed src="//evil.example/x.swf">',
  '<link rel=stylesheet href="//evil.example">',
  '<style>@import "//evil.example";</style>',
  '<base href="//evil.example/">',
  '<meta http-equiv=refresh content="0;//evil.example">',
  '<form action="//evil.example"><button>Go</form>',
  '<input autofocus onfocus="globalThis.hit = 1">',
  '<math><mtext><style><img src=x onerror=hit()>',
  '<!--><img src=x onerror="globalThis.hit = 1">-->',
  '<![CDATA[<script>globalThis.hit = 1</script>]]>',
  '[a road](javascript:globalThis.hit=1)',
  '![](//evil.example/pixel.png)',
  '<javascript:globalThis.hit=1>',
  '[x]: //evil.example "y"',
  '**<img src=x onerror="globalThis.hit = 1">**',
  '- <svg onload="globalThis.hit = 1">',
  '*[x](data:text/html,<script>hit()</script>)*',
  '{@html "<img src=x onerror=hit()>"}',
  '{globalThis.hit = 1}',
  '${globalThis.hit = 1}',
  '" onmouseover="globalThis.hit = 1" x="',
  "' autofocus onfocus='globalThis.hit = 1",
  '&lt;script&gt;globalThis.hit = 1&lt;/script&gt;',
  '&#60;img src=x onerror=hit()&#62;',
  '\\u003cscript\\u003ehit()\\u003c/script\\u003e',
  'url(javascript:hit()) expression(hit())',
  "$& $` $' $1 $$",
  '\u202etpircs\u202c \u2066<b>\u2069 \ufeff',
  '\u0000<scr\u0000ipt>hit()</scr\u0000ipt>',
  'a\u2028<script>hit()</script>\u2029b',
  '\ud800<img src=x onerror=hit()>\udc00'
] as const;

type Plain = Record<string, unknown>;
const plain = (): Plain => structuredClone(sampleFile) as Plain;

/** The sample with another value at a path. */
export function withValue(path: readonly (string | number)[], value: unknown): Plain {
  const file = plain();
  const inner = path
    .slice(0, -1)
    .reduce<unknown>((part, key) => (part as Plain)[key], file) as Plain;
  Object.defineProperty(inner, path.at(-1) as string, {
    value,
    enumerable: true,
    configurable: true,
    writable: true
  });
  return file;
}

/** Every field that holds free text, and how much of it. */
export const textFields: readonly (readonly [path: readonly (string | number)[], most: number])[] =
  [
    [['title'], 60],
    [['steps', 0, 'heading'], 60],
    [['steps', 0, 'words'], 1000],
    [['steps', 1, 'call', 'ask'], 300],
    [['steps', 0, 'lit'], 60],
    [['yard', 'name'], 60],
    [['yard', 'names'], 24]
  ];

/** A text as it stands in its field: some hold a list, or names. */
export const inField = (path: readonly (string | number)[], text: string): unknown =>
  path.at(-1) === 'lit' ? [text] : path.at(-1) === 'names' ? { A: text } : text;

const json = (value: unknown): string => JSON.stringify(value);
const at = (path: readonly (string | number)[], value: unknown): string =>
  json(withValue(path, value));
const deep = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);
const step = sampleFile.steps[0];
const text = json(sampleFile);

/** A link with these bytes for its content, its length and check sum in order. */
function linkOf(content: Uint8Array, layout = 1): string {
  const head = Buffer.alloc(7);
  head.writeUInt8(layout);
  head.writeUInt16BE(content.length, 1);
  head.writeUInt32BE(crc32(content), 3);
  return `#walk=${Buffer.concat([head, content]).toString('base64url')}`;
}

const link = walkFragment(sampleWalk) as string;
const turned = link.slice(0, 40) + (link[40] === 'A' ? 'B' : 'A') + link.slice(41);
const page = (inside: string): string =>
  `<!doctype html><title>x</title><script type="application/json" id="walkthrough">${inside}</script>`;

/** What must be refused, with what the words say of it. */
export const refused: readonly (readonly [
  what: string,
  input: string | Uint8Array,
  words: RegExp
])[] = [
  ['nothing', '', /nothing in it/],
  ['a letter', 'Have a look at my yard.', /holds no walkthrough/],
  ['code', 'globalThis.hit = 1', /holds no walkthrough/],
  ['an address that runs', 'javascript:globalThis.hit=1', /holds no walkthrough/],
  ['a page of someone', '<!doctype html><script>globalThis.hit = 1</script>', /no walkthrough/],
  ['a page with a script inside', page('globalThis.hit = 1'), /breaks off|damaged/],
  ['a page that breaks off', page(text).slice(0, -30), /no walkthrough/],
  ['a picture', pixel(), /neither text nor/],
  [
    'a picture with a walkthrough in it',
    pixel(chunk('tEXt', Buffer.from(`ohmyard\0${text}`))),
    /neither text nor/
  ],
  ['a drawing', '<svg xmlns="http://www.w3.org/2000/svg"/>', /holds no walkthrough/],
  ['a huge picture', new Uint8Array(50_000_001), /At most 50 MB/],
  ['a huge text', ' '.repeat(50_000_001), /At most 50 MB/],
  ['a long text', `{"format":"${'x'.repeat(500_000)}"}`, /far longer/],
  ['a yard', json({ format: 'ohmyard', version: 1, yard: {} }), /This is a yard\. Open it on/],
  ['a link to a yard', '#yard=AQAA', /This is a yard\. Open it on/],
  ['another format', json({ format: 'other', version: 1 }), /no walkthrough of ours/],
  ['a list', '[]', /no walkthrough of ours/],
  ['a newer version', at(['version'], 2), /version 2, newer than this page/],
  ['a version that is none', at(['version'], '1'), /version: met "1"/],
  ['a file that breaks off', text.slice(0, 200), /breaks off/],
  ['a damaged file', text.replace(':', ';'), /not sound JSON/],
  ['NaN for a number', text.replace('"version":1', '"version":NaN'), /not sound JSON/],
  ['Infinity for a number', text.replace('"version":1', '"version":1e999'), /version: met/],
  ['no step', at(['steps'], []), /one step at least/],
  ['41 steps', at(['steps'], Array(41).fill(step)), /at most 40 steps/],
  ['endless steps', at(['steps'], Array(5000).fill(0)), /far more than/],
  ['steps that are none', at(['steps'], { length: 9 }), /steps/],
  ['a step that is none', at(['steps', 0], null), /steps › 0/],
  ['a text that is a number', at(['title'], 7), /title: met 7/],
  ['a text that is a list', at(['steps', 0, 'words'], ['x']), /words/],
  ['a text that is a thing', at(['steps', 0, 'heading'], { toString: 'x' }), /heading/],
  ['a long title', at(['title'], 'x'.repeat(61)), /at most 60 characters/],
  ['long words', at(['steps', 0, 'words'], 'x'.repeat(1001)), /at most 1000 characters/],
  ['a long question', at(['steps', 1, 'call', 'ask'], 'x'.repeat(301)), /at most 300/],
  ['four things lit', at(['steps', 0, 'lit'], ['A', 'B', 'C', 'D']), /at most 3/],
  ['an unknown view', at(['steps', 0, 'show'], ['page']), /plan, rows, panel, diagram/],
  ['no view', at(['steps', 0, 'show'], []), /one view at least/],
  ['a script beside the steps', at(['script'], 'hit()'), /unknown key 'script'/],
  ['a handler in a step', at(['steps', 0, 'onclick'], 'hit()'), /unknown key 'onclick'/],
  ['markup in a step', at(['steps', 0, 'html'], '<b>'), /unknown key 'html'/],
  ['an address in a step', at(['steps', 0, 'href'], '//evil.example'), /unknown key 'href'/],
  ['a key of every thing', at(['__proto__'], { hit: 1 }), /unknown key '__proto__'/],
  [
    'a maker of every thing',
    at(['constructor'], { prototype: { hit: 1 } }),
    /unknown key 'constructor'/
  ],
  ['such a key in a step', at(['steps', 0, '__proto__'], { hit: 1 }), /unknown key/],
  ['such a key in a yard', at(['yard', '__proto__'], { hit: 1 }), /unknown key/],
  ['such a key in a scene', at(['steps', 0, 'scene', '__proto__'], { hit: 1 }), /unknown key/],
  ['such a key in a call', at(['steps', 1, 'call', '__proto__'], { hit: 1 }), /unknown key/],
  ['lists in lists', at(['steps', 0, 'scene'], JSON.parse(deep(13))), /far more than/],
  ['lists without end', `{"format":${deep(50_000)}}`, /far more than|not sound JSON/],
  [
    'many values',
    at(['yard', 'names'], Object.fromEntries(Array.from({ length: 20_001 }, (_, n) => [n, 'x']))),
    /far more than/
  ],
  ['41 roads', at(['yard', 'deckRoads'], 41), /1 to 40 deck roads/],
  ['minus one road', at(['yard', 'deckRoads'], -1), /1 to 40 deck roads/],
  ['half a road', at(['yard', 'deckRoads'], 1.5), /1 to 40 deck roads/],
  ['a road that is not there', at(['steps', 0, 'scene', 'switches'], { Z: 'on' }), /switches › Z/],
  ['a loco that is not there', at(['steps', 0, 'scene', 'locos'], { Hit: 'A' }), /unknown loco/],
  ['a loco called by markup', at(['yard', 'locos'], { '<b>': {} }), /locos/],
  ['a knob turned too far', at(['steps', 0, 'scene', 'controller'], 1e9), /60% east/],
  ['an edit of no wire', at(['steps', 0, 'scene', 'edits'], [{ off: '<b>' }]), /edits/],
  ['an edit that is none', at(['steps', 0, 'scene', 'edits'], [{ run: 'hit()' }]), /edits/],
  ['a fault that is none', at(['steps', 0, 'scene', 'faults'], [{ run: 'hit()' }]), /faults/],
  ['two questions in one', at(['steps', 1, 'call', 'falls'], ['Plover']), /call/],
  ['no question', at(['steps', 1, 'call'], { ask: 'What?' }), /call/],
  ['an answer written down', at(['steps', 1, 'call', 'answer'], 'east'), /unknown key 'answer'/],
  ['an action that does nothing', at(['steps', 1, 'call', 'do'], {}), /at least one of/],
  ['a cut link', link.slice(0, -20), /breaks off/],
  ['a changed link', turned, /check sum/],
  ['a link of another layout', linkOf(Buffer.from([1]), 9), /layout 9/],
  ['a link with nothing', '#walk=', /breaks off/],
  ['a link that is far too long', `#walk=${'A'.repeat(16_001)}`, /too long/],
  ['a link of noise', linkOf(Buffer.from([7, 7, 7])), /damaged/],
  ['a bomb in a link', linkOf(deflateRawSync(Buffer.alloc(8_000_000))), /unfolds/],
  ['a yard in a walkthrough’s link', linkOf(deflateRawSync(json({ format: 'ohmyard' }))), /a yard/]
];

/** What is odd and does no harm: it opens. */
export const odd: readonly (readonly [what: string, input: string | Uint8Array])[] = [
  ['a key twice: the last one counts', text.replace('{', '{"title":"first",')],
  ['a loco asked about that is not there', at(['steps', 1, 'call', 'about'], ['Nobody'])],
  ['a place lit that is not there', at(['steps', 0, 'lit'], ['__proto__', 'road Z', ''])],
  ['empty texts', json({ ...withValue(['title'], ''), steps: [{ heading: '', words: '' }] })],
  ['a byte order mark', `\ufeff${text}`],
  ['a text in UTF-16', new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'))],
  ['a page of its own', page(text.replaceAll('<', '\\u003c'))],
  ['a thousand stars', at(['steps', 0, 'words'], '*'.repeat(1000))],
  ['lists that begin and begin', at(['steps', 0, 'words'], '- '.repeat(500))],
  ['accents that pile up', at(['steps', 0, 'words'], `Z${'\u0300'.repeat(900)}`)],
  ['a letter around the link', `See ${link}. Yours`]
];
