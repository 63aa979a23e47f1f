import { expect, test } from 'vitest';
import { proseOf, type Span } from '../../src/lib/walk';

const plain = (text: string): Span => ({ text, look: 'plain' });
const strong = (text: string): Span => ({ text, look: 'strong' });
const emphasis = (text: string): Span => ({ text, look: 'emphasis' });
const paragraph = (...spans: Span[]) => ({ kind: 'paragraph', spans });
const list = (ordered: boolean, ...items: Span[][]) => ({ kind: 'list', ordered, items });

/** Source: CommonMark 0.31.2, sections 4.8 (paragraphs), 5.3 (lists), 6.2 (emphasis and strong emphasis). */
test.each([
  ['aaa\n\nbbb', [paragraph(plain('aaa')), paragraph(plain('bbb'))]],
  ['aaa\nbbb\n\nccc\nddd', [paragraph(plain('aaa bbb')), paragraph(plain('ccc ddd'))]],
  ['  aaa\n bbb', [paragraph(plain('aaa bbb'))]],
  ['*foo bar*', [paragraph(emphasis('foo bar'))]],
  ['a * foo bar*', [paragraph(plain('a * foo bar*'))]],
  ['foo*bar*', [paragraph(plain('foo'), emphasis('bar'))]],
  ['*foo bar *', [paragraph(plain('*foo bar *'))]],
  ['**foo bar**', [paragraph(strong('foo bar'))]],
  ['** foo bar**', [paragraph(plain('** foo bar**'))]],
  ['foo**bar**', [paragraph(plain('foo'), strong('bar'))]],
  ['- foo\n- bar', [list(false, [plain('foo')], [plain('bar')])]],
  ['1. foo\n2. bar', [list(true, [plain('foo')], [plain('bar')])]],
  ['Foo\n- bar\n- baz', [paragraph(plain('Foo')), list(false, [plain('bar')], [plain('baz')])]],
  ['-one\n\n2.two', [paragraph(plain('-one')), paragraph(plain('2.two'))]]
])('proseOf(%j) reads it as CommonMark does', (text, blocks) => {
  expect(proseOf(text)).toEqual(blocks);
});

test('proseOf(text) knows nothing else of Markdown: the rest is text', () => {
  const text = '# no heading [no link](//x) `no code` ![](//y) > no quote';
  expect(proseOf(text)).toEqual([paragraph(plain(text))]);
});

test('proseOf(text) joins the lines of an item', () => {
  expect(proseOf('- one\n  more\n- *two*')).toEqual([
    list(false, [plain('one more')], [emphasis('two')])
  ]);
});
