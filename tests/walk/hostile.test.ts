import { describe, expect, test } from 'vitest';
import { filledPage, openWalk, proseOf, stepPlay, type Block } from '../../src/lib/walk';
import { inField, odd, refused, textFields, vectors, withValue } from './hostile';
import { sampleWalk } from './sample';

/** All words of blocks, as they are shown. */
const shownIn = (blocks: readonly Block[]): string =>
  blocks
    .flatMap((block) => (block.kind === 'paragraph' ? [block.spans] : block.items))
    .flat()
    .map(({ text }) => text)
    .join('');

describe('openWalk(input)', () => {
  test.each(refused)('refuses %s, and says why', (_, input, words) => {
    const opened = openWalk(input);
    expect('wrong' in opened && opened.wrong).toMatch(words);
    // A message shows what it met; no mark in it may turn the text or break its lines at will.
    expect('wrong' in opened && opened.wrong).not.toMatch(
      /[\u202a-\u202e\u2066-\u2069]|(?!\n)\p{Cc}/u
    );
    expect('hit' in Object.prototype).toBe(false);
  });

  test.each(odd)('opens %s', (_, input) => {
    const opened = openWalk(input);
    expect(opened).toHaveProperty('ok.steps');
    if (!('ok' in opened)) return;
    for (const index of opened.ok.steps.keys()) {
      expect(stepPlay(opened.ok, index).play.board.sides).toHaveLength(1);
    }
  });

  test.each(textFields)('keeps every hostile text in %j as text', (path, most) => {
    for (const vector of vectors) {
      const value = inField(path, vector.slice(0, most));
      const opened = openWalk(JSON.stringify(withValue(path, value)));
      expect(opened, vector).toHaveProperty('ok');
      const kept = 'ok' in opened ? path.reduce<unknown>(inside, opened.ok) : undefined;
      expect(kept, vector).toEqual(value);
    }
  });
});

const inside = (part: unknown, key: string | number): unknown =>
  (part as Record<string | number, unknown>)[key];

test('at least 60 files are hostile, and 40 texts', () => {
  expect(refused.length).toBeGreaterThanOrEqual(60);
  expect(vectors.length).toBeGreaterThanOrEqual(40);
});

test('proseOf(text) leaves out stars and dashes alone: what looks like markup stays text', () => {
  const bare = (text: string) => text.replace(/[*\s-]/g, '');
  for (const vector of vectors) expect(bare(shownIn(proseOf(vector)))).toBe(bare(vector));
});

test('a page of its own holds no text as markup, whatever stands in the walkthrough', () => {
  const shell =
    '<title>x</title><script type="application/json" id="walkthrough"></script><script>1</script>';
  const steps = sampleWalk.steps.slice(0, 1);
  for (const vector of vectors) {
    const page = filledPage(shell, { ...sampleWalk, steps, title: vector });
    expect(page.match(/</g)).toHaveLength(6);
    expect(openWalk(`<!doctype html>${page}`)).toHaveProperty('ok.title', vector);
  }
  expect(() => filledPage('<p>no place</p>', sampleWalk)).toThrow(RangeError);
});

test('a call which the engine cannot answer is left out, with the reason', () => {
  const opened = openWalk(JSON.stringify(withValue(['steps', 1, 'call', 'about'], ['Nobody'])));
  expect(opened).toHaveProperty('ok');
  const made = 'ok' in opened ? stepPlay(opened.ok, 1) : undefined;
  expect(made?.play.call).toBeUndefined();
  expect(made?.trouble).toMatch(/unknown 'Nobody'/);
});
