import { describe, expect, test } from 'vitest';
import { playSequence, quayWorking, SequenceSchema, type Sequence } from '../../src/lib/motion';
import { admit, type Scene, type Yard } from '../../src/lib/yard';
import { sceneOf, yardOf } from '../yard/build';
import { of } from './quay';

const { yard: input, sequence } = quayWorking;
const working = admit('sequence', SequenceSchema, sequence);

/** Plays a sequence on a yard from its own scene, or from another. */
const played = (yard: Yard, steps: Sequence['steps'], scene = sceneOf(yard, sequence.scene)) =>
  playSequence(yard, scene, { steps });

describe('playSequence(yard, scene, sequence)', () => {
  const yard = yardOf(input);
  const told = played(yard, working.steps);

  test('the working of the demo scenario runs clean to its end', () => {
    expect(told.map(({ findings }) => findings)).toEqual(working.steps.map(() => []));
    const { scene } = told.at(-1) ?? expect.fail('nothing played');
    expect(scene).toMatchObject({ deck: -220, pin: 'home', controller: 0 });
    const speeds = told.flatMap((each) =>
      Object.values(each.scene.locos).map(({ speed }) => speed)
    );
    expect(new Set(speeds)).toEqual(new Set([0]));
    expect(of(scene, 'Heron').road).toBe('2');
    expect(of(scene, 'Plover').road).toBe('Q1');
    expect(scene.stock.coach).toMatchObject({ road: 'Q1', coupled: 'Plover', fallen: false });
  });

  test('the same again, bit for bit', () => {
    expect(played(yard, working.steps)).toEqual(told);
  });

  /** The scene before a step of the working, and that step done otherwise. */
  const instead = (index: number, change: Partial<Sequence['steps'][number]>) => {
    const scene = told[index - 1]?.scene as Scene;
    const step = { ...(working.steps[index] as Sequence['steps'][number]), ...change };
    return played(yard, [step], scene)[0]?.findings;
  };

  test.each<[what: string, index: number, change: Partial<Sequence['steps'][number]>, RegExp]>([
    ['a loco not named moves', 6, { moves: [] }, /^Heron moves too\.$/],
    [
      'a toggle is forgotten',
      2,
      { do: { deck: '2', pin: 'home', switch: { 2: false } } },
      /^Plover does not get there\.$/
    ],
    ['the deck is pinned', 3, { do: { deck: -100 } }, /pinned/],
    [
      'it meets stock unasked',
      4,
      { until: { loco: 'Plover', at: 'end' } },
      /^Plover runs into coach\. /
    ],
    ['what does not touch is coupled', 3, { do: { couple: { coach: 'Plover' } } }, /does not touch/]
  ])('tells it when %s', (_, index, change, words) => {
    expect(instead(index, change)?.join(' ')).toMatch(words);
  });

  test('stock across the deck’s edge: the deck refuses, and the working goes no further', () => {
    const scene = sceneOf(yard, { deck: 'C', locos: { Plover: { road: 'C', atMm: 10 } } });
    const steps = [
      { words: '', do: { deck: 'R' as const, pin: 'home' as const }, moves: [] },
      ...working.steps
    ];
    const [first, ...rest] = played(yard, steps, { ...scene, pin: 'out' });
    expect(first?.findings).toEqual(["Plover stands across the deck's edge: move it clear first."]);
    expect(rest).toEqual([]);
  });

  test('Quillby Quay as built: Plover, left live on the Quay line, falls while Heron goes home', () => {
    const built = yardOf({ deckRoads: 5, stablingRoads: 4 });
    const scene = sceneOf(built, {
      deck: '2',
      locos: { Heron: 'R', Plover: { road: 'Q', atMm: 2000 } },
      switches: { R: true, 2: true }
    });
    const step = { words: '', drive: 1, until: { loco: 'Heron', on: '2' }, moves: [] };
    expect(played(built, [step], scene)[0]?.findings).toEqual([
      'Plover fell into the gap: road Q was live and nothing faced it; its feed has no pin contact.'
    ]);
  });
});
