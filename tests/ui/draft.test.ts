import { describe, expect, test } from 'vitest';
import { sizeWords } from '../../src/lib/tables';
import { tried, valueAt, withValue, yardOf } from '../../src/lib/ui/builder/draft';
import { firstFields, groups, type Field } from '../../src/lib/ui/builder/fields';

const all: readonly Field[] = [...firstFields, ...groups.flatMap(({ fields }) => fields)];
const field = (path: string): Field => all.find((each) => each.path.join('.') === path) as Field;
const draft = { deckRoads: 5, stablingRoads: 4 };

describe('the fields of the builder', () => {
  test('every one is a value of the yard, and no two are the same', () => {
    const yard = yardOf({ ...draft, colours: { scheme: 'NEM 605' } });
    for (const { path } of all) expect(valueAt(yard, path), path.join('.')).toBeDefined();
    const paths = all.map(({ path }) => path.join('.'));
    expect(new Set(paths).size).toBe(paths.length);
  });

  test('every one says what it does', () => {
    for (const { name, about, path } of all) {
      expect(name.length, path.join('.')).toBeGreaterThan(2);
      expect(about, path.join('.')).toMatch(/^[A-Z].*\.$/);
    }
  });

  test('every option of a choice fits', () => {
    const choices = all.filter(({ options }) => options);
    expect(choices.length).toBeGreaterThan(2);
    for (const choice of choices) {
      for (const [value] of choice.options ?? []) {
        expect(tried(draft, choice, value), `${choice.name}: ${value}`).toHaveProperty('ok');
      }
    }
  });
});

describe('tried(draft, field, text)', () => {
  test('a number that fits is taken, with a comma too', () => {
    expect(tried(draft, field('supply.volts'), '16,5')).toEqual({
      ok: { ...draft, supply: { volts: 16.5 } }
    });
  });

  test.each([
    ['supply.volts', '50', 'Not 50. Allowed: 1 to 24 V.'],
    ['deckRoads', '41', 'Not 41. Allowed: 1 to 40 deck roads.'],
    ['deckRoads', '2.5', 'Not 2.5. Allowed: 1 to 40 deck roads.'],
    ['centresMm', 'wide', 'Not wide. Allowed: 30 to 200 mm.'],
    [
      'wires.main.size',
      'thick',
      "Not thick. Allowed: a wire size such as '24/0.2' (strands/mm), '0.5 mm²' or 'AWG 22'."
    ]
  ])('%s %s is refused in words', (path, text, wrong) => {
    expect(tried(draft, field(path), text)).toEqual({ wrong });
  });

  test('names of roads are a list, however they are parted', () => {
    for (const text of ['Q 1', 'Q, 1', ' Q;1 ']) {
      expect(tried(draft, field('endStops'), text)).toEqual({
        ok: { ...draft, endStops: ['Q', '1'] }
      });
    }
    expect(tried(draft, field('endStops'), 'A')).toEqual({
      wrong: 'Not A. Allowed: fixed roads of this yard: running or stabling roads.'
    });
  });

  test('the plug is taken away and given back', () => {
    const bare = tried(draft, field('plug'), 'false');
    expect(bare).toEqual({ ok: { ...draft, plug: false } });
    expect(yardOf({ ...draft, plug: false }).plug).toBe(false);
    expect(yardOf({ ...draft, plug: true }).plug).toEqual({ returnContacts: 2 });
  });

  test('a long wrong text is not said whole', () => {
    expect(tried(draft, field('centresMm'), 'x'.repeat(400))).toEqual({
      wrong: `Not ${'x'.repeat(40)}…. Allowed: 30 to 200 mm.`
    });
  });

  test('a field may say what it means when empty', () => {
    const name: Field = { path: ['name'], name: 'Name', about: '', kind: 'text', empty: 'Mine' };
    expect(tried({ ...draft, name: 'Shed' }, name, '')).toEqual({ ok: { ...draft, name: 'Mine' } });
  });

  test('an empty field goes back to what is usual in the scale', () => {
    const own = { ...draft, scale: 'N', centresMm: 45 } as const;
    const result = tried(own, field('centresMm'), ' ');
    expect(result).toEqual({ ok: { ...draft, scale: 'N' } });
    expect(yardOf({ ...draft, scale: 'N' }).centresMm).toBe(40);
  });

  test.each([
    ['0.5mm2', '0.5 mm²'],
    ['0,22 mm²', '0.22 mm²'],
    ['awg 24', 'AWG 24'],
    ['24 AWG', 'AWG 24'],
    ['7 / 0.2', '7/0.2']
  ])('a size written %s is %s', (text, size) => {
    expect(tried(draft, field('wires.dropper.size'), text)).toEqual({
      ok: { ...draft, wires: { dropper: { size } } }
    });
  });
});

test('withValue takes out what is undefined, and leaves its neighbours', () => {
  expect(withValue({ a: { b: 1, c: 2 } }, ['a', 'b'], undefined)).toEqual({ a: { c: 2 } });
});

/** Areas of strands by geometry; gauges of 0.205 and 0.519 mm² by ASTM B258. */
test.each([
  ['7/0.2', '0.22 mm², about AWG 24'],
  ['16/0.2', '0.5 mm², about AWG 20'],
  ['AWG 20', '0.52 mm², about 16/0.2'],
  ['0.75 mm²', 'about 24/0.2, about AWG 18']
])('sizeWords(%s)', (size, words) => {
  expect(sizeWords(size)).toBe(words);
});
