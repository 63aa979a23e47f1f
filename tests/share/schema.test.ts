import { Validator, type Schema } from '@cfworker/json-schema';
import { toJsonSchema } from '@valibot/to-json-schema';
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fileText, open, type YardFile } from '../../src/lib/share';
import { FileSchema } from '../../src/lib/share/file';
import { anyFile, quay } from './any';

const place = join(import.meta.dirname, '../../static/yard.schema.json');

/** What a JSON schema cannot say, such as sums over several values, is left to opening the file. */
const generated = () => ({
  title: 'A moving-deck fiddle yard',
  ...toJsonSchema(FileSchema, { typeMode: 'input', target: 'draft-2020-12', errorMode: 'ignore' })
});

const validator = new Validator(JSON.parse(readFileSync(place, 'utf8')) as Schema, '2020-12');
const fits = (value: unknown): boolean => validator.validate(value).valid;
const written = (file: YardFile) => JSON.parse(fileText(file)) as Record<string, unknown>;

describe('static/yard.schema.json', () => {
  test('is what the schema in the code says; put right by: npx vitest run tests/share/schema -u', async () => {
    const text = `${JSON.stringify(generated(), null, 2)}\n`;
    await expect(text).toMatchFileSnapshot(place);
  });

  test('fits every file that is written', () => {
    fc.assert(
      fc.property(anyFile, (file) => {
        expect(fits(written(file))).toBe(true);
      }),
      { numRuns: 200, seed: 9 }
    );
  });

  test('refuses only what opening refuses, and most of it', () => {
    const spoil = fc.constantFrom<(yard: Record<string, unknown>) => void>(
      (yard) => (yard.deckRoads = 41),
      (yard) => (yard.deckRoads = 2.5),
      (yard) => (yard.return = 'tree'),
      (yard) => (yard.supply = { volts: 230 }),
      (yard) => (yard.wires = { main: { lengthM: 0 } }),
      (yard) => (yard.name = 'n'.repeat(61)),
      (yard) => (yard.strange = true),
      (yard) => (yard.switching = 'yes')
    );
    fc.assert(
      fc.property(anyFile, spoil, (file, harm) => {
        const value = written(file);
        harm(value.yard as Record<string, unknown>);
        expect(fits(value)).toBe(false);
        expect(open(JSON.stringify(value))).toHaveProperty('why', 'does not fit');
      }),
      { numRuns: 200, seed: 10 }
    );
  });

  test('knows the format, and asks for a yard', () => {
    const { yard, ...rest } = written(quay);
    expect(fits({ ...rest, yard })).toBe(true);
    expect(fits(rest)).toBe(false);
    expect(fits({ ...rest, yard, format: 'other' })).toBe(false);
    expect(fits({ ...rest, yard, version: 2 })).toBe(false);
  });
});
