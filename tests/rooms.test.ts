import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { rooms } from '../scripts/rooms.js';

const lib = join(import.meta.dirname, '../src/lib');
/** Reads content for the pages' loaders, on the server only; no room may use it. */
const notRooms = ['server'];

const built = rooms.filter((room) => existsSync(join(lib, room)));

const filesOf = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|svelte)$/.test(name))
    .map((name) => join(folder, name));

/** What a file imports or re-exports, as it is written there; text in quotes is no import. */
const importsIn = (text: string): readonly string[] =>
  [
    ...text.matchAll(/^\s*(?:import|export|\})[^'"`;]*['"]([^'"\n]+)['"]/gm),
    ...text.matchAll(/\bimport\(\s*['"]([^'"\n]+)['"]/g)
  ].map(([, name]) => name as string);

/** The place under src/lib that an import leads to; undefined for a package. */
function placeOf(file: string, name: string): string | undefined {
  if (name.startsWith('.')) return relative(lib, resolve(dirname(file), name));
  return name.startsWith('$lib') ? name.replace(/^\$lib\/?/, '') : undefined;
}

/** What is wrong with an import from a room, in words; undefined when nothing is. */
function fault(room: string, file: string, name: string): string | undefined {
  const place = placeOf(file, name);
  if (place === undefined) return undefined;
  const [to = '', ...inside] = place.split('/');
  if (to === room) return undefined;
  const where = `${relative(lib, file)} imports '${name}'`;
  if (to === '..') return `${where}: outside src/lib`;
  const left = rooms.slice(0, rooms.indexOf(room));
  if (!left.includes(to)) return `${where}: ${room} may import only from ${left.join(', ')}`;
  return inside.length > 0 ? `${where}: only the index of ${to}` : undefined;
}

describe('rooms of src/lib', () => {
  test('every folder is a room, or known to be none', () => {
    const known: readonly string[] = [...rooms, ...notRooms];
    expect(readdirSync(lib).filter((name) => !known.includes(name))).toEqual([]);
    expect(built.length).toBeGreaterThan(7);
  });

  test.each(built)('%s has an index, and imports only from its left, and only an index', (room) => {
    const files = filesOf(join(lib, room));
    expect(existsSync(join(lib, room, 'index.ts'))).toBe(true);
    const faults = files.flatMap((file) =>
      importsIn(readFileSync(file, 'utf8')).flatMap((name) => fault(room, file, name) ?? [])
    );
    expect(faults).toEqual([]);
  });

  test('the check itself finds what it looks for', () => {
    const at = (room: string, path: string, name: string) => fault(room, join(lib, path), name);
    const text = [
      "import { a } from './a';",
      'import {',
      '  b',
      "} from '../b';",
      "  import c from 'c';",
      "export { d } from '$lib/d';",
      'const said = "import { e } from \'e\';";',
      "const later = await import('f');"
    ].join('\n');
    expect(importsIn(text)).toEqual(['./a', '../b', 'c', '$lib/d', 'f']);
    expect(at('yard', 'yard/edits/off.ts', '../runs')).toBeUndefined();
    expect(at('yard', 'yard/edits/off.ts', '../../circuit')).toBeUndefined();
    expect(at('yard', 'yard/edits/off.ts', 'valibot')).toBeUndefined();
    expect(at('yard', 'yard/edits/off.ts', '../../motion')).toContain('may import only from');
    expect(at('yard', 'yard/wire.ts', '$lib/tables/wire')).toContain('only the index of tables');
    expect(at('draw', 'draw/ink.ts', '../server')).toContain('may import only from');
    expect(at('ui', 'ui/say.ts', '../../../tests/near')).toContain('outside src/lib');
  });
});
