import type { HuntReading } from '../../share';
import type { TestTold } from './huntTold';

/** What somebody sees of a faulty yard, and every test and outcome that would be that. */
export interface SymptomCase extends HuntReading {
  /** Where: a road, or the two of a joint. */
  readonly road: string;
  /** What stood how: "with the deck at A"; empty where it needs no telling. */
  readonly when: string;
}

export interface SymptomKind {
  readonly id: string;
  readonly words: string;
  readonly cases: readonly SymptomCase[];
}

const stopOf = ({ moment }: TestTold): string => {
  const [, stop] = / at (.+)$/.exec(moment) ?? [];
  return stop === undefined ? '' : `with the deck at ${stop}`;
};

/** Cases of one outcome of the tests of a kind, by the road that they feed. */
const fed =
  (kind: string, outcome: string) =>
  (test: TestTold): readonly SymptomCase[] => {
    if (test.kind !== kind || test.outcomes.every(({ id }) => id !== outcome)) return [];
    const road = test.id.replace(/^(run|panel lamp) (.+?), .*$/, '$2');
    return [{ test: test.id, outcome, road, when: stopOf(test) }];
  };

/** Cases of a road that runs and should not, in moments whose id begins so. */
const stray =
  (moment: 'off' | 'own' | 'unpinned') =>
  (test: TestTold): readonly SymptomCase[] =>
    test.moment.startsWith(`${moment} `) && test.id.startsWith('stray,')
      ? test.others.map((road) => ({
          test: test.id,
          outcome: road,
          road,
          when: moment === 'own' ? test.place.replace(/,$/, '') : stopOf(test)
        }))
      : [];

const across = (test: TestTold): readonly SymptomCase[] =>
  test.kind === 'across'
    ? [{ test: test.id, outcome: 'limit', road: test.roads.join(' and '), when: stopOf(test) }]
    : [];

const kinds: readonly (readonly [string, string, (test: TestTold) => readonly SymptomCase[]])[] = [
  ['still', 'A loco stands still on a road that is on', fed('run', 'still')],
  ['slow', 'A loco runs slowly', fed('run', 'slow')],
  ['wrong way', 'A loco runs the wrong way', fed('run', 'wrong way')],
  ['limit', 'The controller is at its limit', fed('run', 'limit')],
  ['off', 'A loco runs with every switch off', stray('off')],
  ['other', 'A loco runs when only another road is on', stray('own')],
  ['pin', 'A loco runs with the pin drawn', stray('unpinned')],
  ['joint', 'A short while wheels cross a joint', across],
  ['dark', 'A panel lamp stays dark', fed('panelLamp', 'dark')],
  ['burnt', 'A panel lamp burns out', fed('panelLamp', 'burnt')]
];

/** Everything that can be seen of a faulty yard without an instrument. */
export const symptomKinds = (tests: readonly TestTold[]): readonly SymptomKind[] =>
  kinds
    .map(([id, words, casesOf]) => ({ id, words, cases: tests.flatMap(casesOf) }))
    .filter(({ cases }) => cases.length > 0);

/** What was seen, in words for the fault log. */
export const seenWords = ({ words }: SymptomKind, { road, when }: SymptomCase): string =>
  `${words}: road ${road}${when && `, ${when}`}.`;
