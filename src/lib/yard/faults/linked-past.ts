import * as v from 'valibot';
import { contacts } from '../../tables';
import { findPart } from '../runs';
import { feedOf, feeds } from '../second';
import { switchedRoads, switchPlace } from '../switching';
import type { Yard } from '../yard';
import { faultKind } from './kind';
import { metalRun } from './parts';

/** The roads that a feed serves by a switch. */
const servedBy = (yard: Yard, feed: string): readonly string[] =>
  switchedRoads(yard).filter((road) => feedOf(yard, road) === feed);

/** The feed bus is linked past the switches, and the pin contacts ahead of them: it feeds every road whatever they say. */
export const linkedPast = faultKind({
  key: 'linkedPast',
  schema: v.strictObject({ linkedPast: v.picklist(['feed', 'feed 2'], 'feed or feed 2') }),
  places: (yard) =>
    feeds(yard)
      .filter((feed) => servedBy(yard, feed).length > 1)
      .map((linkedPast) => ({ linkedPast })),
  place: (fault) => fault.linkedPast,
  at: (fault, yard) => servedBy(yard, fault.linkedPast).map((road) => switchPlace(yard, road)),
  adds(runs, { linkedPast: feed }, { yard }) {
    const { ohms } = contacts.terminal;
    return servedBy(yard, feed).map((road) => {
      const place = switchPlace(yard, road);
      const { to } = findPart(runs, place);
      return metalRun(`link past ${place}`, `feed tag ${road}`, to, ohms);
    });
  },
  words: ({ linkedPast }) => `the ${linkedPast} is linked past every switch`,
  repair: () => 'take off the links that join the feed to the far sides of the switches',
  example: { linkedPast: 'feed' }
});
