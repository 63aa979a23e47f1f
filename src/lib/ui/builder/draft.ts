import {
  admit,
  BorderError,
  fit,
  roads,
  SceneSchema,
  YardSchema,
  type Scene,
  type Yard,
  type YardInput
} from '../../yard';
import type { Field } from './fields';

/** A yard as far as its owner has set it: what is left out follows the scale. */
export type Draft = YardInput & Readonly<Record<string, unknown>>;

/** What is designed: the yard, and the road on which each loco begins. */
export interface Design {
  readonly yard: Draft;
  readonly locos: Readonly<Record<string, string>>;
}

/** A change that fits, or words for the place beside the field. */
export type Tried = { readonly ok: Draft } | { readonly wrong: string };

type Plain = Readonly<Record<string, unknown>>;
const isPlain = (value: unknown): value is Plain => typeof value === 'object' && value !== null;

/** The value at a path; undefined where there is none. */
export const valueAt = (value: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((inner, key) => (isPlain(inner) ? inner[key] : undefined), value);

/** A copy with the value at a path; `undefined` takes it out, so that the usual one stands again. */
export function withValue(whole: Plain, path: readonly string[], value: unknown): Plain {
  const [key, ...rest] = path as [string, ...string[]];
  const next = rest.length === 0 ? value : withValue(asPlain(whole[key]), rest, value);
  const { [key]: _, ...others } = whole;
  void _;
  return next === undefined ? others : { ...others, [key]: next };
}

const asPlain = (value: unknown): Plain => (isPlain(value) ? value : {});

/** Ways in which people write a size, made one: `0.5mm2` is `0.5 mm²`, `awg24` is `AWG 24`. */
const tidySize = (text: string): string =>
  text
    .trim()
    .replace(',', '.')
    .replace(/^(\d+(?:\.\d+)?)\s*mm(?:²|2|\^2)?$/i, '$1 mm²')
    .replace(/^(?:awg)?\s*#?(\d{1,2})\s*(?:awg)?$/i, 'AWG $1')
    .replace(/\s*\/\s*/, '/');

/** What a field's text means; empty is undefined, which is what is usual, unless the field says more. */
export function meaningOf({ kind, empty }: Field, text: string): unknown {
  const bare = text.trim();
  if (bare === '') return empty;
  if (kind === 'check') return bare === 'true';
  if (kind === 'list') return bare.split(/[\s,;]+/).filter((name) => name !== '');
  if (kind === 'size') return tidySize(bare);
  if (kind !== 'number') return bare;
  const number = Number(bare.replace(',', '.'));
  return Number.isNaN(number) ? bare : number;
}

/** The draft as a whole yard. @throws BorderError */
export const yardOf = (draft: Draft): Yard => admit('yard', YardSchema, draft);

/** The moment at which a design is played: locos on roads that are not there stay away. */
export function sceneOf(yard: Yard, { locos }: Design): Scene {
  const there = Object.entries(locos).filter(([, road]) => roads(yard).includes(road));
  const scene = admit('scene', SceneSchema, {
    controller: 0.6,
    locos: Object.fromEntries(there)
  });
  return fit('scene', yard, scene);
}

/** A changed design, or what is wrong with the name, in words. */
export type Renamed = { readonly ok: Design } | { readonly wrong: string };

const ownLocos = ({ locos }: Draft): Plain => asPlain(locos);

/** The design with one more loco of its own, under the first name that is free. */
export function withLoco(design: Design): Design {
  const own = ownLocos(design.yard);
  const free = (count: number): string => {
    const name = `Loco ${count}`;
    return name in own ? free(count + 1) : name;
  };
  const locos = { ...own, [free(1)]: { shape: 'tank' } };
  return { ...design, yard: { ...design.yard, locos } as Draft };
}

const without = (all: Plain, name: string): Plain =>
  Object.fromEntries(Object.entries(all).filter(([each]) => each !== name));

/** The design without a loco of its own. */
export const withoutLoco = ({ yard, locos }: Design, name: string): Design => ({
  yard: { ...yard, locos: without(ownLocos(yard), name) } as Draft,
  locos: without(locos, name) as Design['locos']
});

/** The design with a loco of its own under another name, in its old place; or why that cannot be. */
export function renamedLoco({ yard, locos }: Design, from: string, to: string): Renamed {
  const own = ownLocos(yard);
  if (to !== from && to in own) return { wrong: `There is another ${to}: take a name of its own.` };
  const moved = (all: Plain): Plain =>
    Object.fromEntries(
      Object.entries(all).map(([name, each]) => [name === from ? to : name, each])
    );
  const next = { ...yard, locos: moved(own) } as Draft;
  const wrong = whatIsWrong(next, to);
  return wrong ? { wrong } : { ok: { yard: next, locos: moved(locos) as Design['locos'] } };
}

/** Letters of a wrong text that are said again. */
const LONGEST = 40;
const clipped = (text: string): string =>
  text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;

/** Why a draft is no yard, in words; undefined where it is one. */
function whatIsWrong(draft: Draft, text: string): string | undefined {
  try {
    yardOf(draft);
    return undefined;
  } catch (error) {
    if (!(error instanceof BorderError)) throw error;
    return `Not ${clipped(text.trim())}. Allowed: ${error.findings[0]?.allowed}.`;
  }
}

/** Tries a field's new text on a draft. What does not fit is told in words; the draft stays. */
export function tried(draft: Draft, field: Field, text: string): Tried {
  const next = withValue(draft, field.path, meaningOf(field, text)) as Draft;
  const wrong = whatIsWrong(next, text);
  return wrong ? { wrong } : { ok: next };
}
