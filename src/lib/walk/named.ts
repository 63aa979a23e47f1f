import { roads, vehicles, type Scene, type Yard } from '../yard';
import { isThere, roadOfLit } from './lit';
import { listOf, namesIn } from './plain';

/** Nouns after which letters and numbers are names of roads. */
const NOUNS =
  '(?:[Rr]oad|[Rr]ow|[Tt]oggle|[Pp]ush|[Ss]elector|[Ll]amp|[Dd]ropper|[Ss]ection|[Cc]ontact)(?:e?s)?';

/** The roads that a text names: "road A", "toggles A and B", "Heron on C", or by their owner's own names. */
export function roadsNamed(yard: Yard, text: string): readonly string[] {
  const all = roads(yard);
  const letters = all.filter((name) => /^\D/.test(name));
  const lists = [
    ...text.matchAll(new RegExp(`${NOUNS}\\s+(?:at\\s+|to\\s+)?(${listOf(all)})`, 'g')),
    ...(letters.length > 0
      ? text.matchAll(new RegExp(`\\b(?:on|onto)\\s+(${listOf(letters)})`, 'g'))
      : [])
  ].flatMap(([, list = '']) => namesIn(list, all));
  const owned = Object.entries(yard.names).flatMap(([road, name]) =>
    name.length > 2 && text.includes(name) ? [road] : []
  );
  return all.filter((road) => lists.includes(road) || owned.includes(road));
}

/** Something that a text names, and whether what is lit shows it. */
export interface Named {
  readonly name: string;
  readonly isLit: (lit: readonly string[]) => boolean;
}

const fixed = (yard: Yard, scene: Scene): readonly (readonly [RegExp, Named])[] => [
  [
    /\bpin(?:ned)?\b/i,
    {
      name: 'pin',
      isLit: (lit) =>
        lit.some(
          (each) =>
            /^pin( contact .+)?$/.test(each) ||
            (each.startsWith('road ') && isThere(yard, scene, each.replace('road', 'pin contact')))
        )
    }
  ],
  [/\bplug\b/i, { name: 'plug', isLit: (lit) => lit.some((each) => /^plug\b/.test(each)) }],
  [
    /\bcontroller\b/i,
    { name: 'controller', isLit: (lit) => lit.some((each) => /^(controller|road )/.test(each)) }
  ]
];

/** What a text names of a scene: roads, vehicles, pin, plug and controller. */
export function named(yard: Yard, scene: Scene, text: string): readonly Named[] {
  const on = (road: string) => (each: string) => roadOfLit(yard, scene, each) === road;
  const standing = Object.entries(vehicles(scene)).filter(([name]) =>
    new RegExp(`\\b${name}\\b`).test(text)
  );
  return [
    ...roadsNamed(yard, text).map((road) => ({
      name: `road ${road}`,
      isLit: (lit: readonly string[]) => lit.some(on(road))
    })),
    ...standing.map(([name, { road }]) => ({
      name,
      isLit: (lit: readonly string[]) => lit.some((each) => each === name || on(road)(each))
    })),
    ...fixed(yard, scene).flatMap(([form, what]) => (form.test(text) ? [what] : []))
  ];
}
