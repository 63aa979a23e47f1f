import fc from 'fast-check';
import { describe, test } from 'vitest';
import { locoNamed, motorConstant, read, roads, type Reading } from '../../src/lib/yard';
import { near } from '../circuit/near';
import type { Moment } from './build';
import { anyMoment, anyYard } from './random';

const runs = { numRuns: 80, seed: 11 };
/** Balance of a solved circuit, from the engine's own promise. */
const balanced = { rel: 1e-9, abs: 1e-12 };

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

/** Amps of the locos on these roads, feed rail to return rail. */
const taken = ({ scene }: Moment, { amps }: Reading, where: readonly string[]): number =>
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
      near(taken(at, reading, roads(at.yard)), -reading.amps('controller'), balanced);
    });
  });

  test('as much comes home as went out', () => {
    property(({ yard }, { amps }) => {
      const ring = yard.return === 'ring' && roads(yard).length > 1;
      const home = amps('return wire') + (ring ? amps('closing link') : 0);
      near(home, amps('feed wire'), balanced);
      near(home, -amps('controller'), balanced);
    });
  });

  test('a road’s two droppers carry the amps of its loco', () => {
    property((at, reading) => {
      for (const road of roads(at.yard)) {
        near(reading.amps(`feed dropper ${road}`), taken(at, reading, [road]), balanced);
        near(reading.amps(`return dropper ${road}`), taken(at, reading, [road]), balanced);
      }
    });
  });

  test('each hop of the feed, and of a chained return, carries the sum of the roads beyond it', () => {
    property((at, reading) => {
      const all = roads(at.yard);
      for (const [index, road] of all.slice(1).entries()) {
        const hop = `${all[index] as string}-${road}`;
        const beyond = taken(at, reading, all.slice(index + 1));
        near(reading.amps(`feed link ${hop}`), beyond, balanced);
        if (at.yard.return === 'chain') near(reading.amps(`loop link ${hop}`), beyond, balanced);
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
