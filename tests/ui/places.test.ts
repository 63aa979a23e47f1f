import { expect, test } from 'vitest';
import { placesOf } from '../../src/lib/ui/places';
import { read, type Scene } from '../../src/lib/yard';
import { sampleWalk } from '../walk/sample';

const { yard, steps } = sampleWalk;
const scene = steps[0]?.scene as Scene;

/** What a name lights with these wire edits. */
function lit(name: string, edits: Scene['edits'] = [], untold: readonly string[] = []) {
  const reading = read(yard, { ...scene, edits });
  const side = { title: '', yard, drawn: { mirrored: false, order: [] } };
  return placesOf({ ...side, index: 0, scene: reading.scene, reading }, untold, [name]);
}

test('a road lights its whole loop: out of the controller, through its loco, home again', () => {
  const places = lit('road A');
  for (const place of ['controller', 'road A', 'toggle A', 'Plover']) {
    expect(places).toContain(place);
  }
  expect(places).not.toContain('toggle B');
  expect(new Set(places).size).toBe(places.length);
});

test('plug and pin light all their contacts, any other name itself', () => {
  expect(lit('plug').length).toBeGreaterThan(6);
  expect(lit('pin')).toHaveLength(1 + 4);
  expect(lit('Heron')).toEqual(['Heron']);
});

test('before a call a road lights the same, whatever would come of it', () => {
  const broken: Scene['edits'] = [{ off: 'return dropper A' }];
  expect(lit('road A', broken, ['A'])).toEqual(lit('road A', [], ['A']));
  expect(lit('road A', broken)).not.toEqual(lit('road A'));
});
