import { expect, test } from 'vitest';
import { readout } from '../../src/lib/ui/readout';
import { read, type Edit } from '../../src/lib/yard';
import { moment } from '../yard/build';

/** Plover on A, switched on; Heron on B, off; C empty and off; full knob, all held still. */
function view(edits: Edit[] = []) {
  const { yard, scene } = moment(
    { deckRoads: 3 },
    { locos: { Plover: 'A', Heron: 'B' }, switches: { A: true }, controller: 1, edits }
  );
  return {
    title: '',
    index: 0,
    drawn: { mirrored: false, order: [] },
    yard,
    scene,
    reading: read(yard, scene)
  };
}

test.each<[string, string | RegExp]>([
  ['toggle B', 'Toggle B: open, 11.7 V across, 0.00 A.'],
  ['toggle C', 'Toggle C: open, one side joined to nothing, 0.00 A.'],
  ['toggle A', /^Toggle A: closed, 0\.01 V across, 0\.5\d A\.$/],
  ['road A', /^Road A: 11\.\d V between its rails, 0\.5\d A\.$/],
  ['road B', 'Road B: 0.00 V between its rails, 0.00 A.'],
  ['road C', 'Road C: a rail is joined to nothing, 0.00 A.'],
  ['Heron', 'Heron on road B: 0.00 V across, 0.00 A.'],
  ['feed wire', /^Feed wire: 0\.\d\d V along it, 0\.5\d A\.$/],
  ['controller', /^Controller: 11\.\d V, 0\.5\d A\.$/],
  ['nowhere', '']
])('readout(%s)', (place, words) => {
  const said = readout(view(), [], place);
  if (words instanceof RegExp) expect(said).toMatch(words);
  else expect(said).toBe(words);
});

test('readout: tells nothing of a road that waits for a call, and no sum that would tell it', () => {
  const untold = ['B', 'meter volts'];
  const held = view([{ volts: ['feed', 'feed rail B'] }]);
  for (const place of ['toggle B', 'road B', 'Heron', 'feed wire', 'meter volts']) {
    expect(readout(held, untold, place)).toMatch(/: your call first\.$/);
  }
  expect(readout(held, untold, 'controller')).not.toContain(' A');
});

test('readout: an instrument tells its figure and where its probes are', () => {
  const held = view([{ volts: ['feed', 'feed rail C'] }]);
  expect(readout(held, [], 'meter volts')).toBe('Voltmeter: 0.00 V between feed and feed rail C.');
});
