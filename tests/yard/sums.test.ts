import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  deckRoads,
  locoNamed,
  motorConstant,
  read,
  roads,
  roadsOf,
  type Reading,
  type Road,
  type Yard
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import type { Moment } from './build';
import { anyMoment, anyYard } from './random';

const runs = { numRuns: 80, seed: 11 };
/** Balance of a solved circuit, from the engine's own promise. */
const balanced = { rel: 1e-9, abs: 1e-12 };

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

/** Amps of all runs that end in a node. */
const into = ({ runs: all, amps }: Reading, node: string): number =>
  sum(all.filter(({ to }) => to === node).map((run) => amps(run.parts[0]?.id ?? '')));

/** Roads that are chained to each other: all of them, or those of each bed of a moving deck. */
const sides = (yard: Yard): readonly (readonly string[])[] => {
  const on = (bed: Road['bed']) =>
    roadsOf(yard).flatMap((road) => (road.bed === bed ? [road.name] : []));
  return yard.plug === false ? [roads(yard)] : [on('west'), on('deck'), on('east')];
};

/** Each hop from road to road, with the roads that lie beyond it. */
const hops = (names: readonly string[]): readonly [string, readonly string[]][] =>
  names
    .slice(1)
    .map((road, index) => [`${names[index] as string}-${road}`, names.slice(index + 1)]);

/** Amps of the locos on these roads, feed rail to return rail. */
const takenOn = ({ scene }: Moment, { amps }: Reading, where: readonly string[]): number =>
  sum(
    Object.entries(scene.locos)
      .filter(([, at]) => where.includes(at.road))
      .map(([name]) => amps(name))
  );

const property = (check: (at: Moment, reading: Reading) => void): void => {
  fc.assert(
    fc.property(anyMoment(anyYard), (at) => {
      check(at, read(at.yard, at.scene));
    }),
    runs
  );
};

describe('read(scene).amps, any yard', () => {
  test('the locos take together what the controller gives', () => {
    property((at, reading) => {
      near(takenOn(at, reading, roads(at.yard)), -reading.amps('controller'), balanced);
    });
  });

  test('as much comes home as went out', () => {
    property((_, reading) => {
      const home = into(reading, 'return');
      near(home, reading.amps('feed wire'), balanced);
      near(home, -reading.amps('controller'), balanced);
    });
  });

  test('what the deck takes comes home by its lead, and by nothing else', () => {
    property((at, reading) => {
      if (at.yard.plug === false) {
        expect(reading.runs.filter(({ to }) => to === 'deck joint')).toEqual([]);
        return;
      }
      const taken = takenOn(at, reading, deckRoads(at.yard));
      near(into(reading, 'deck joint'), taken, balanced);
      const contacts = [1, 2].map((index) => reading.amps(`plug return ${String(index)}`));
      for (const amps of contacts) near(amps, taken / 2, balanced);
    });
  });

  test('a road’s two droppers carry the amps of its loco', () => {
    property((at, reading) => {
      for (const road of roads(at.yard)) {
        near(reading.amps(`feed dropper ${road}`), takenOn(at, reading, [road]), balanced);
        near(reading.amps(`return dropper ${road}`), takenOn(at, reading, [road]), balanced);
      }
    });
  });

  test('each hop of the feed carries the sum of the roads beyond it', () => {
    property((at, reading) => {
      for (const [hop, beyond] of hops(roads(at.yard))) {
        near(reading.amps(`feed link ${hop}`), takenOn(at, reading, beyond), balanced);
      }
    });
  });

  test('each hop of a chained return carries the sum of the roads beyond it on its side', () => {
    property((at, reading) => {
      const chained = at.yard.return === 'chain' ? sides(at.yard).flatMap(hops) : [];
      const links = reading.runs.filter(({ id }) => /^loop link .+-/.test(id));
      if (at.yard.return === 'chain') expect(links).toHaveLength(chained.length);
      for (const [hop, beyond] of chained) {
        near(reading.amps(`loop link ${hop}`), takenOn(at, reading, beyond), balanced);
      }
    });
  });

  test('in a star each road’s own wire carries its amps home', () => {
    property((at, reading) => {
      if (at.yard.return !== 'star') return;
      for (const road of roads(at.yard)) {
        near(reading.amps(`return wire ${road}`), takenOn(at, reading, [road]), balanced);
      }
    });
  });

  test('each loco meets its own law: U = i·R + k·v', () => {
    property(({ scene }, { amps, between }) => {
      for (const [name, { road, speed }] of Object.entries(scene.locos)) {
        const loco = locoNamed(name);
        const volts = between(`feed rail ${road}`, `return rail ${road}`);
        near(volts, amps(name) * loco.ohms + motorConstant(loco) * speed, { rel: 1e-9, abs: 1e-9 });
      }
    });
  });

  test('a meter in the return reads the same as one in the feed', () => {
    fc.assert(
      fc.property(anyMoment(anyYard), fc.nat(), ({ yard, scene }, pick) => {
        const road = roads(yard)[pick % roads(yard).length] as string;
        const edits = [
          { meter: 'out', in: `feed dropper ${road}` },
          { meter: 'home', in: `return dropper ${road}` }
        ];
        const { amps } = read(yard, { ...scene, edits });
        near(amps('meter home'), amps('meter out'), balanced);
      }),
      runs
    );
  });
});
