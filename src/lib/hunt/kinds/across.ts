import { surely, type TestKind } from './kind';

/** Wheels across a joint at the deck's edge: does the controller go to its limit? */
export const across: TestKind = {
  key: 'across',
  make: (_, moment) =>
    moment.kind !== 'across'
      ? []
      : [
          {
            id: `across, ${moment.id}`,
            kind: 'across',
            moment,
            words: `Push a loco by hand across the joint of roads ${moment.roads.join(' and ')}: is the controller at its limit?`,
            place: `at the joint of ${moment.roads.join(' and ')}`,
            cost: 1.5,
            outcomes: [
              { id: 'no', words: 'it is not' },
              { id: 'limit', words: 'the controller is at its limit' }
            ],
            shares: (settled) => surely(settled.limiting() ? 1 : 0, 2)
          }
        ]
};
