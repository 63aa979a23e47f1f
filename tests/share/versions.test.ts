import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { open, type YardFile } from '../../src/lib/share';
import { broughtUp, VERSION, versions } from '../../src/lib/share/versions';

const folder = join(import.meta.dirname, 'samples');
const sample = (name: string): string => readFileSync(join(folder, name), 'utf8');

describe('samples of every version', () => {
  test('there is one for each, and what it meant', () => {
    const names = versions.flatMap(({ version }) => [
      `v${version}.meant.json`,
      `v${version}.yard.json`
    ]);
    expect(readdirSync(folder).sort()).toEqual(expect.arrayContaining(names.sort()));
  });

  // A default that changes would change what kept files mean: that needs a new version, whose
  // predecessor's `toNext` writes the old default out. Keys added since may stand in the yard too.
  test.each(versions.map(({ version }) => version))(
    'version %i opens, and means what it meant',
    (version) => {
      const opened = open(sample(`v${version}.yard.json`));
      expect(opened).toMatchObject({
        ok: JSON.parse(sample(`v${version}.meant.json`)) as YardFile
      });
    }
  );

  test.each(['v1.link.txt', 'v1.svg', 'v1.png.base64'])('%s opens to the same yard', (name) => {
    const text = sample(name);
    const opened = open(
      name.endsWith('base64') ? Uint8Array.from(Buffer.from(text, 'base64')) : text
    );
    expect(opened).toEqual(open(sample('v1.yard.json')));
    expect(opened).toHaveProperty('ok');
  });
});

describe('broughtUp(file)', () => {
  const made = [
    { version: 1, toNext: (file: object) => ({ ...file, yard: { roads: 5 } }) },
    { version: 2, toNext: (file: object) => ({ ...file, colour: 'grey' }) },
    { version: 3 }
  ];

  test('goes version by version to the newest', () => {
    expect(broughtUp({ version: 1 }, made)).toEqual({
      version: 3,
      yard: { roads: 5 },
      colour: 'grey'
    });
    expect(broughtUp({ version: 2 }, made)).toEqual({ version: 3, colour: 'grey' });
    expect(broughtUp({ version: 3 }, made)).toEqual({ version: 3 });
  });

  test('every version but the newest leads to the next', () => {
    expect(versions.map(({ version }) => version)).toEqual(versions.map((_, index) => index + 1));
    expect(versions.at(-1)?.version).toBe(VERSION);
    expect(versions.slice(0, -1).every(({ toNext }) => toNext)).toBe(true);
    expect(versions.at(-1)?.toNext).toBeUndefined();
  });
});
