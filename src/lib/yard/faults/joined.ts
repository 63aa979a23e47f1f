import * as v from 'valibot';
import { contacts } from '../../tables';
import { roadsOf } from '../road';
import { faultKind } from './kind';
import { metalRun, pairName, partsOf } from './parts';

/** A metal joiner was left in the gap of a cut road: the feed rails of two of its sections are one. */
export const joined = faultKind({
  key: 'joined',
  schema: v.strictObject({
    joined: v.tuple([v.string(), v.string()], 'two sections of a road, such as [A1, A2]')
  }),
  places(yard) {
    const wires = partsOf(yard, 'wire');
    return roadsOf(yard).flatMap(({ name, next: { east } }) =>
      east === undefined || wires.includes(`feed joiner ${name}-${east}`)
        ? []
        : [{ joined: [name, east] as [string, string] }]
    );
  },
  place: (fault) => pairName(fault.joined),
  at: () => [],
  adds(_, { joined: [one, other] }) {
    const id = `metal joiner ${one}-${other}`;
    const { ohms } = contacts['rail joiner'];
    return [metalRun(id, `feed rail ${one}`, `feed rail ${other}`, ohms)];
  },
  words: ({ joined: [one, other] }) => `a metal joiner is in the gap between ${one} and ${other}`,
  repair: ({ joined: [one, other] }) =>
    `put an insulating joiner in the gap between ${one} and ${other}`,
  example: { joined: ['R1', 'R2'] }
});
