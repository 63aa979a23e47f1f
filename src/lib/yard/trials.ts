import { admit } from './border';
import { facing, holeAt, holes, type Facing, type Hole } from './deck';
import { roadNamed, roads } from './road';
import { fit, SceneSchema, type Scene } from './scene';
import { switchedRoads } from './switching';
import { pinnedRoads } from './wire';
import type { Yard } from './yard';

/** A moment in which a yard is tried, at full knob. */
export interface Trial {
  /** One road switched on, none, all with the pin out, or wheels across a joint. */
  readonly kind: 'own' | 'off' | 'unpinned' | 'across';
  /** Name of the hole; none where the deck has no holes. */
  readonly stop: string | undefined;
  /** The road switched on, or the two roads on which the wheels stand. */
  readonly pair: readonly string[];
  readonly scene: Scene;
  /** Roads of which it is asked whether they are live. */
  readonly asked: readonly string[];
  /** Those of them which this trial feeds as they should be. */
  readonly judged: readonly string[];
}

type Hands = Pick<Scene, 'pin'> &
  Partial<Pick<Scene, 'locos'>> & { readonly on: readonly string[] };

/** These roads switched on; a rotary can do the first of them only. */
const switchedOn = (yard: Yard, on: readonly string[]): Partial<Scene> => {
  const can = switchedRoads(yard).filter((road) => on.includes(road));
  return yard.switching === 'rotary'
    ? { selector: can[0] ?? 'off' }
    : { switches: Object.fromEntries(can.map((road) => [road, true])) };
};

function trialsAt(yard: Yard, hole: Hole | undefined, own: readonly string[]): Trial[] {
  const all = roads(yard);
  const switched = switchedRoads(yard);
  const stop = hole?.name;
  const trial = (
    kind: Trial['kind'],
    { on, pin, locos = {} }: Hands,
    rest: Partial<Pick<Trial, 'pair' | 'asked' | 'judged'>>
  ): Trial => {
    const deck = hole?.deckMm ?? 0;
    const hands = { controller: 1, ...switchedOn(yard, on), deck, pin, locos };
    const scene = fit('trial', yard, admit('trial', SceneSchema, hands));
    return { kind, stop, pair: [], asked: [], judged: [], ...rest, scene };
  };
  const pin = hole ? 'home' : 'out';
  const judged = all.filter((road) => !switched.includes(road));
  const off = trial('off', { on: [], pin }, { asked: all, judged });
  const alone = own.map((road) =>
    trial('own', { on: [road], pin }, { pair: [road], asked: all, judged: [road] })
  );
  if (!hole) return [off, ...alone];
  const unpinned = pinnedRoads(yard).map((road) => {
    const on = yard.switching === 'rotary' ? [road] : switched;
    return trial('unpinned', { on, pin: 'out' }, { asked: [road] });
  });
  const across = facing(yard, hole.deckMm)
    .filter(({ fixed }) => roadNamed(yard, fixed).whole === hole.fixed)
    .map((meeting) => {
      const pair = [meeting.fixed, meeting.deckRoad];
      return trial('across', { on: pair, pin, locos: astride(yard, meeting) }, { pair });
    });
  const again = holeAt(yard, hole.deckMm)?.name !== stop;
  return again ? [...alone, ...across] : [off, ...alone, ...unpinned, ...across];
}

/** Plover with its wheels on both roads that meet at a stop. */
function astride(yard: Yard, { deckRoad, end }: Facing): Scene['locos'] {
  const atMm = end === 'west' ? 0 : roadNamed(yard, deckRoad).lengthMm;
  return { Plover: { road: deckRoad, atMm, faces: 'east', speed: 0, fallen: false } };
}

/** Every trial of a yard: a switch is tried at each stop at which its road faces another, or at the first. */
export function trialsOf(yard: Yard): readonly Trial[] {
  const stops = holes(yard);
  const at = (road: string) => {
    const { whole } = roadNamed(yard, road);
    return stops.filter(({ fixed, deckRoad }) => fixed === whole || deckRoad === whole);
  };
  return (stops.length > 0 ? stops : [undefined]).flatMap((hole, index) =>
    trialsAt(
      yard,
      hole,
      switchedRoads(yard).filter((road) => {
        const there = at(road);
        return there.length > 0 ? there.includes(hole as Hole) : index === 0;
      })
    )
  );
}
