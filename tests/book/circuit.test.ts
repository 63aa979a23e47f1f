import { describe, expect, test } from 'vitest';
import { circuit, namesOf, sampleLoops } from '../../src/lib/book/circuit';
import { loopOf, type LoopStep } from '../../src/lib/book/loop';
import { schedule } from '../../src/lib/book/schedule';
import { wiresOf } from '../../src/lib/book/wires';
import { solve } from '../../src/lib/circuit';
import { wireOhmsPerMetre } from '../../src/lib/tables';
import { circuitOf, wire, type Yard, type YardInput } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, yardOf } from '../yard/build';

describe('loopOf(yard, road)', () => {
  const ohmsOf = (yard: Yard, steps: readonly LoopStep[]): number => {
    const wires = wiresOf(yard);
    return steps.reduce((sum, step) => {
      if (step.kind === 'part') return sum + step.part.ohms;
      return step.numbers.reduce((all, number) => {
        const { size = '', lengthM = NaN } = wires[number - 1] ?? {};
        return all + wireOhmsPerMetre(size) * lengthM;
      }, sum);
    }, 0);
  };

  // Ohm's law along a way without branches that carry anything: R = U / I.
  test.each<[string, YardInput]>([
    ['wired for good', { deckRoads: 8 }],
    ['through one plug contact', { deckRoads: 8, stablingRoads: 2, plug: { returnContacts: 1 } }]
  ])('of a yard %s has the ohms that the engine finds, out and home', (_, input) => {
    const { yard, scene } = moment(input, {
      controller: 1,
      switches: { H: true },
      locos: { Plover: 'H' }
    });
    const told = solve(circuitOf(yard, scene));
    const amps = Math.abs(told.amps('Plover'));
    const { out, home } = loopOf(yard, 'H');
    near(ohmsOf(yard, out), (told.between('feed', 'feed rail H') ?? 0) / amps, { rel: 1e-9 });
    near(ohmsOf(yard, home), (told.between('return rail H', 'return') ?? 0) / amps, { rel: 1e-9 });
  });

  test('of a stabling road goes through the pin contact, then the toggle; the deck’s plug is none of its way', () => {
    const [, stabling] = sampleLoops(yardOf({ deckRoads: 3, stablingRoads: 2 }));
    const parts = [...(stabling?.out ?? []), ...(stabling?.home ?? [])].flatMap((step) =>
      step.kind === 'part' ? [step.part.id] : []
    );
    expect(parts).toEqual(['pin contact 1', 'toggle 1']);
  });
});

describe('designations', () => {
  // Source: IEC 81346-2:2009: S switch, X plug, R resistor and diode, G supply; P from memory.
  test('cover every kind of switch, lamps, a second controller and a second plug, each name once', () => {
    const names = namesOf(
      yardOf({
        deckRoads: 5,
        stablingRoads: 2,
        switching: 'rotary',
        lamps: 'track',
        second: { roads: ['B'] }
      })
    );
    expect(names.get('selector A')).toBe('−S1:2');
    expect(names.get('controller 2')).toBe('−G2');
    expect(names.get('lamp A')).toBe('−P1');
    expect(names.get('lamp guard A')).toBe('−R2');
    expect(new Set(names.values()).size).toBe(names.size);
    const pushes = namesOf(yardOf({ deckRoads: 2, switching: 'pushes' }));
    expect(pushes.get('push B')).toBe('−S2');
  });

  test('name every part of the wiring but wires and second poles, and stand in the sheet', () => {
    const yard = yardOf({ deckRoads: 5, stablingRoads: 4, lamps: 'own' });
    const names = namesOf(yard);
    const parts = wire(yard)
      .flatMap((run) => run.parts)
      .filter(({ kind }) => !['wire', 'lamp pole'].includes(kind));
    expect(parts.filter(({ id }) => !names.has(id))).toEqual([]);
    expect(circuit.make(yard).tables[0]?.rows).toHaveLength(names.size);
  });
});

describe('the schedule’s colours', () => {
  const coloursOf = (input: YardInput) => {
    const table = schedule.make(yardOf(input)).tables.find(({ title }) => title === 'Wires');
    const [job, colour] = ['For', 'Colour'].map((name) => table?.columns.indexOf(name) ?? -1);
    return new Map(table?.rows.map((row) => [row[job as number], row[colour as number]]));
  };

  // Source: NEM 605:2014, table 1 (black common return, red +); letters IEC 60757.
  test('are letters and a word, by the scheme, and the owner’s own win', () => {
    const nem = coloursOf({ deckRoads: 2, colours: { scheme: 'NEM 605', return: 'GY' } });
    expect(nem.get('feed of road A')).toBe('RD red');
    expect(nem.get('return of road A')).toBe('GY grey');
    const none = coloursOf({ deckRoads: 2 });
    expect(none.get('feed of road A')).toBe('');
  });

  test('of a lamp change at its LED', () => {
    const yard = yardOf({ deckRoads: 1, lamps: 'own', colours: { scheme: 'NEM 605' } });
    const table = schedule.make(yard).tables.find(({ title }) => title === 'Wires');
    const at = table?.columns.indexOf('Colour') ?? -1;
    const lamp = table?.rows.filter((row) => row[3] === 'lamp A').map((row) => row[at]);
    expect(lamp).toEqual(['BN brown', 'BN brown', 'BN brown', 'BK black']);
  });
});
