import * as v from 'valibot';
import { contacts } from '../../tables';
import { roads } from '../road';
import { faultKind } from './kind';
import { metalRun } from './parts';

/** Metal lies across the rails of a road: a tool, a track pin, an end stop, a sleeper without its gap. */
export const shorted = faultKind({
  key: 'shorted',
  schema: v.strictObject({
    shorted: v.pipe(v.union([v.string(), v.number()], 'the letter of a road'), v.transform(String))
  }),
  places: (yard) => roads(yard).map((shorted) => ({ shorted })),
  place: (fault) => fault.shorted,
  at: () => [],
  adds(_, { shorted: road }) {
    const id = `metal across ${road}`;
    const { ohms } = contacts.terminal;
    return [metalRun(id, `feed rail ${road}`, `return rail ${road}`, ohms)];
  },
  words: (fault) => `metal bridges the rails of road ${fault.shorted}`,
  repair: (fault) =>
    `take the metal off the rails of road ${fault.shorted}: a tool, a pin, an end stop, a sleeper without its gap`,
  example: { shorted: 'A' }
});
