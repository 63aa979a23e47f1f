import * as v from 'valibot';
import type { Scene } from '../../yard';
import { questionKind } from './kind';

/** Nearer than this counts as the same to the eye. Source: common practice. */
export const SAME = 0.1;
/** Under this share of the other it counts as nothing. */
export const NOTHING = 0.02;

const words = {
  speed: { nothing: 'stops', less: 'slower', same: 'about the same', more: 'faster' },
  meter: { nothing: 'nothing', less: 'less', same: 'the same', more: 'more' }
} as const;

const speed = v.strictObject({
  speed: v.string('the name of a loco'),
  options: v.optional(v.array(v.picklist(Object.values(words.speed))))
});
const meter = v.strictObject({
  meter: v.string('the name of a meter'),
  with: v.string('the name of a meter'),
  options: v.optional(v.array(v.picklist(Object.values(words.meter))))
});

const listed = (kind: keyof typeof words): string => Object.values(words[kind]).join(', ');

type Ratio = keyof typeof words.speed;

function ratio(mine: number, other: number): Ratio {
  if (Math.abs(mine) <= NOTHING * Math.abs(other)) return 'nothing';
  const share = mine / other;
  if (share < 1 - SAME) return 'less';
  return share > 1 + SAME ? 'more' : 'same';
}

const speedOf = (scene: Scene, name: string) => Math.abs(scene.locos[name]?.speed ?? 0);

/** How fast is a loco against before; or what does a meter read against another? */
export const compare = questionKind({
  key: 'compare',
  schema: v.union(
    [speed, meter],
    `{ speed: loco } with options of ${listed('speed')}, or { meter: name, with: name } with options of ${listed('meter')}`
  ),
  asked: (spec) =>
    'speed' in spec
      ? [{ id: spec.speed, options: spec.options ?? Object.values(words.speed) }]
      : [{ id: `meter ${spec.meter}`, options: spec.options ?? Object.values(words.meter) }],
  answer(spec, { before, settled, reading }): Record<string, string> {
    if ('speed' in spec) {
      const name = spec.speed;
      return { [name]: words.speed[ratio(speedOf(settled, name), speedOf(before, name))] };
    }
    const [mine, other] = [spec.meter, spec.with].map((id) => reading.amps(`meter ${id}`));
    return { [`meter ${spec.meter}`]: words.meter[ratio(mine as number, other as number)] };
  },
  names: (spec) => ('speed' in spec ? [spec.speed] : [`meter ${spec.meter}`, `meter ${spec.with}`]),
  hides: (spec) => ('speed' in spec ? [spec.speed] : [`meter ${spec.meter}`])
});
