import type { Symptom } from './symptoms';
import { joinWords } from './words';

const namesOf = (alike: readonly Symptom[]): readonly string[] =>
  alike.flatMap(({ road }) => road ?? []);

const many = (alike: readonly Symptom[]): string =>
  `${alike.length > 1 ? 'roads' : 'road'} ${joinWords(namesOf(alike), 'and')}`;

const are = (alike: readonly Symptom[], one: string, more: string): string =>
  `R${many(alike).slice(1)} ${alike.length > 1 ? more : one}`;

const where = ([one]: readonly Symptom[]): string =>
  one?.at ? ` while the deck is at ${joinWords(one.at, 'or')}` : '';

const lamps = (alike: readonly Symptom[], one: string, more: string): string =>
  `Lamp${alike.length > 1 ? 's' : ''} ${joinWords(namesOf(alike), 'and')} ${alike.length > 1 ? more : one} when switched on.`;

const limit = (when: string): string => `The controller is at its limit ${when}.`;

/** What each kind says of the roads which show it alike. */
const told: Readonly<Record<Symptom['kind'], (alike: readonly Symptom[]) => string>> = {
  dead: (alike) => `${are(alike, 'stays', 'stay')} dead when switched on.`,
  slow: (alike) => `Locos are slow on ${many(alike)}.`,
  backwards: (alike) => `Locos run the wrong way on ${many(alike)}.`,
  'live off': (alike) => `${are(alike, 'is', 'are')} live with every switch off${where(alike)}.`,
  follows: (alike) =>
    `${are(alike, 'is', 'are')} live when only road ${alike[0]?.other} is switched on${where(alike)}.`,
  'live unpinned': (alike) => `${are(alike, 'is', 'are')} live with the pin out${where(alike)}.`,
  'lamp dark': (alike) => lamps(alike, 'stays dark', 'stay dark'),
  'lamp burnt': (alike) => lamps(alike, 'flashes up and burns out', 'flash up and burn out'),
  short: (alike) =>
    limit(
      namesOf(alike).length === 0
        ? 'whatever is switched on'
        : `once road ${joinWords(namesOf(alike), 'or')} is switched on`
    ),
  'short across': (alike) => {
    const pairs = alike.map(({ road, other }) => `${road} and ${other}`);
    return limit(`while wheels stand on roads ${joinWords(pairs, 'or')}`);
  }
};

const group = ({ kind, other, at }: Symptom): string =>
  JSON.stringify([kind, kind === 'short across' ? '' : other, at]);

/** Symptoms as the person who works the yard would report them; a fault may show none. */
export function symptomWords(symptoms: readonly Symptom[]): string {
  const groups = symptoms.map(group);
  const sentences = symptoms.flatMap((one, index) => {
    const alike = symptoms.filter((_, each) => groups[each] === groups[index]);
    return alike[0] === one ? [told[one.kind](alike)] : [];
  });
  return sentences.join(' ') || 'Nothing shows.';
}
