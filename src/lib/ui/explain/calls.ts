import type { Question } from '../../predict';
import {
  actionWords,
  flip,
  holeAt,
  holes,
  isOn,
  lampRoads,
  stopWords,
  switchedRoads,
  vehicles,
  type Action,
  type Scene,
  type Yard
} from '../../yard';

/** Knob for a call: brisk, not full. Source: common practice. */
const BRISK = 0.6;

/** Something a hand can do on a board, in words. */
export interface Deed {
  readonly words: string;
  readonly action: Action;
}

/** Everything that one movement of a hand can change on a board. */
export function deedsOn(yard: Yard, scene: Scene): readonly Deed[] {
  const roads = switchedRoads(yard).filter(
    (road) => yard.switching !== 'rotary' || !isOn(yard, scene, road)
  );
  const stops = holes(yard).filter(
    (hole) => holeAt(yard, hole.deckMm) === hole && hole.deckMm !== scene.deck
  );
  const settings = [BRISK, -BRISK, 0].filter((setting) => setting !== scene.controller);
  const actions: readonly Action[] = [
    ...roads.map((road): Action => flip(yard, scene, road)),
    ...settings.map((controller): Action => ({ controller })),
    ...(holeAt(yard, scene.deck)
      ? [{ pin: scene.pin === 'home' ? ('out' as const) : ('home' as const) }]
      : []),
    ...(yard.plug ? [{ plug: scene.plug === 'in' ? ('out' as const) : ('in' as const) }] : [])
  ];
  return [
    ...actions.map((action) => ({ words: actionWords(action, yard), action })),
    ...stops.map(({ name, deckMm }) => ({
      words: `You move the deck, pin home: ${stopWords(yard, deckMm)}.`,
      action: { deck: name, pin: 'home' as const }
    }))
  ];
}

/** The kinds of question that are made here. */
export const kinds = {
  about: 'which way a loco goes',
  falls: 'whether a loco falls',
  limit: 'whether the controller’s limit acts',
  lamps: 'how a lamp looks'
} as const;
export type Kind = keyof typeof kinds;

/** The kinds that a board has something for. */
export const kindsOn = (yard: Yard, scene: Scene): readonly Kind[] => [
  ...(Object.keys(vehicles(scene)).length > 0 ? (['about', 'falls'] as const) : []),
  'limit',
  ...(lampRoads(yard).length > 0 ? (['lamps'] as const) : [])
];

/** Of what a kind of question asks: locos on the board, or roads with a lamp. */
export function subjects(kind: Kind, yard: Yard, scene: Scene): readonly string[] {
  if (kind === 'limit') return [];
  if (kind === 'lamps') return lampRoads(yard);
  return Object.keys(kind === 'about' ? scene.locos : vehicles(scene));
}

/** Most things asked in one call. */
export const MOST_ASKED = 3;

/** The kind of a question, and of what it asks; nothing for kinds made elsewhere. */
export function readQuestion(
  question: Question
): { readonly kind: Kind; readonly of: readonly string[] } | undefined {
  if (question.about) return { kind: 'about', of: question.about };
  if (question.falls) return { kind: 'falls', of: question.falls.of };
  if (question.lamps) return { kind: 'lamps', of: question.lamps };
  return question.limit ? { kind: 'limit', of: [] } : undefined;
}

/** A question of a kind. */
export function questionOf(
  kind: Kind,
  of: readonly string[],
  action: Action | undefined
): Question {
  const done = action ? { do: action } : {};
  if (kind === 'limit') return { ...done, limit: 'controller' };
  if (kind === 'falls') return { ...done, falls: { of: [...of] } };
  return kind === 'lamps' ? { ...done, lamps: [...of] } : { ...done, about: [...of] };
}
