import { describe, expect, test } from 'vitest';
import {
  admit,
  apply,
  applyEdit,
  EditSchema,
  editKinds,
  editWords,
  PlaceError,
  places,
  wire,
  type Edit
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, reading, thrown, yardOf } from './build';

/** Plover on A, switched on, knob at 60 % east: 7.2 V. */
const running = (edits: readonly Edit[], extra: { switches?: Record<string, boolean> } = {}) =>
  reading(
    { deckRoads: 2 },
    { locos: { Plover: 'A' }, switches: { A: true }, controller: 0.6, ...extra, edits: [...edits] }
  );

const plain = running([]).amps('Plover');

describe.each(editKinds.map((kind) => ({ key: kind.key, kind })))('edit kind $key', ({ kind }) => {
  const example = admit('edit', EditSchema, kind.example);

  test('admit(EditSchema): its example is an edit, told in words', () => {
    expect(example).toEqual(kind.example);
    expect(editWords(example)).toMatch(/^[a-z].* (is|lies) /);
  });

  test('applyEdit(runs): its example changes a yard, and leaves the runs it was given', () => {
    const runs = wire(yardOf({ deckRoads: 2 }));
    const before = JSON.stringify(runs);
    expect(applyEdit(runs, example)).not.toEqual(runs);
    expect(JSON.stringify(runs)).toBe(before);
  });

  test('applyEdit(runs): a place that is not there is refused with those that are', () => {
    const wrong = JSON.parse(
      JSON.stringify(kind.example).replace(/dropper A|toggle A|rail A|"A"/, (found) =>
        found.replace('A', 'Z')
      )
    ) as Edit;
    const error = thrown(() => applyEdit(wire(yardOf({ deckRoads: 1 })), wrong));
    expect(error).toBeInstanceOf(PlaceError);
    expect((error as PlaceError).message).toMatch(
      /^No '.*Z' in this yard\. There are: feed( wire)?, .*return (dropper|tag) A\.$/
    );
  });
});

test('editWords(edit): tells each kind as a modeller would', () => {
  expect(editKinds.map((kind) => editWords(admit('edit', EditSchema, kind.example)))).toEqual([
    'the return dropper A is off',
    'the return dropper A is on the feed',
    'a 10 Ω resistor is in the feed dropper A',
    'toggle A is in the return dropper A',
    'metal lies across toggle A',
    "the meter 'out' is in the feed dropper A",
    "the voltmeter is between the controller's feed and feed rail A",
    'the ohmmeter is between feed tag A and feed rail A',
    "the test lamp is between the controller's feed and return rail A"
  ]);
});

describe('read(scene with an edit)', () => {
  test('off: a wire that is off stops its loco', () => {
    expect(running([{ off: 'return dropper A' }]).amps('Plover')).toBe(0);
    expect(plain).toBeGreaterThan(0.3);
  });

  test('move: both droppers on one leg leave no volts between the rails', () => {
    const both = running([{ move: 'return dropper A', to: 'feed' }]);
    near(both.between('feed rail A', 'return rail A'), 0, { abs: 1e-12 });
    expect(both.amps('Plover')).toBe(0);
  });

  test('move: both droppers on the other leg turn the volts round', () => {
    const swapped = running([
      { move: 'feed dropper A', to: 'return' },
      { move: 'return dropper A', to: 'feed' }
    ]);
    near(swapped.amps('Plover'), -plain, { rel: 1e-9 });
  });

  test('move: a dropper put where it was changes nothing', () => {
    near(running([{ move: 'feed dropper A', to: 'feed' }]).amps('Plover'), plain, { rel: 1e-12 });
    expect(editWords({ move: 'feed dropper A', to: 'feed' })).toBe(
      'the feed dropper A is where it belongs'
    );
  });

  test('resistor: takes its share of the volts, the same in feed and return', () => {
    const [feed, home] = ['feed dropper A', 'return dropper A'].map((place) =>
      running([{ resistor: 10, in: place }]).amps('Plover')
    );
    near(feed, home as number, { rel: 1e-12 });
    near(7.2 / (feed as number) - 7.2 / plain, 10, { rel: 1e-9 });
  });

  test('toggle: moved to the return it works as in the feed', () => {
    const moved: Edit = { toggle: 'A', in: 'return dropper A' };
    expect(running([moved], { switches: { A: false } }).amps('Plover')).toBe(0);
    near(running([moved]).amps('Plover'), plain, { rel: 1e-12 });
    const { yard, scene } = moment({ deckRoads: 1 }, { edits: [moved] });
    const runs = apply(yard, scene);
    expect(runs.find((run) => run.id === 'return A')?.parts.map((part) => part.id)).toEqual([
      'return dropper A',
      'toggle A'
    ]);
    expect(places(runs).filter((id) => id === 'toggle A')).toHaveLength(1);
  });

  test('metal: across an open toggle it is a toggle that is on', () => {
    const off = { switches: { A: false } };
    expect(running([], off).amps('Plover')).toBe(0);
    near(running([{ metal: 'toggle A' }], off).amps('Plover'), plain, { rel: 2e-3 });
  });

  test('metal: across a closed toggle it changes next to nothing', () => {
    near(running([{ metal: 'toggle A' }]).amps('Plover'), plain, { rel: 1e-3 });
  });

  test('meter: reads the amps of its loco and takes next to none', () => {
    const met = running([
      { meter: 'out', in: 'feed dropper A' },
      { meter: 'home', in: 'return dropper A' }
    ]);
    near(met.amps('meter out'), met.amps('Plover'), { rel: 1e-12 });
    near(met.amps('meter home'), met.amps('meter out'), { rel: 1e-12 });
    near(met.amps('Plover'), plain, { rel: 3e-3 });
  });
});

describe('admit(EditSchema)', () => {
  test.each([
    { off: 3 },
    { move: 'feed wire', to: 'return' },
    { move: 'feed dropper A', to: 'lamp' },
    { resistor: 0, in: 'feed wire' },
    { resistor: 10 },
    { meter: 'Out!', in: 'feed wire' },
    { off: 'feed wire', metal: 'toggle A' }
  ])('refuses %j', (edit) => {
    expect(() => admit('edit', EditSchema, edit)).toThrow(/^edit.*: met .*, allowed: /);
  });
});

test('applyEdit: a second part of the same name in one wire is refused by name', () => {
  const twice: Edit[] = [
    { resistor: 10, in: 'feed dropper A' },
    { resistor: 20, in: 'feed dropper A' }
  ];
  expect(() => running(twice)).toThrow("There is a 'resistor in feed dropper A' already");
});
