import {
  admit,
  ampsText,
  feedOf,
  fit,
  read,
  roads,
  roadTitle,
  SceneSchema,
  switchedRoads,
  type Scene,
  type Yard
} from '../yard';
import type { Check, Finding } from './finding';

/** Knobs turned opposite ways, a road of each controller switched on. */
function opposed(yard: Yard): Scene {
  const all = roads(yard);
  const second = all.filter((road) => feedOf(yard, road) === 'feed 2').slice(0, 1);
  const first = all.filter((road) => feedOf(yard, road) === 'feed').slice(0, 1);
  const on = yard.switching === 'rotary' ? [] : switchedRoads(yard);
  const switches = Object.fromEntries(
    [...first, ...second].filter((road) => on.includes(road)).map((road) => [road, true])
  );
  return fit('scene', yard, admit('scene', SceneSchema, { controller: 1, second: -1, switches }));
}

function finding(yard: Yard): Finding {
  const scene = opposed(yard);
  const { amps, limiting } = read(yard, scene);
  const source = yard.second?.shares === 'supply' ? 'supply' : 'controller 2';
  const where = (yard.second?.roads ?? []).map((road) => roadTitle(yard, road));
  return limiting
    ? {
        grade: 'must fix',
        what: 'Two controllers on one supply and one return short it as soon as their knobs are turned opposite ways.',
        where,
        amount: `${ampsText(amps(source))} with no loco on the track`,
        why: 'One lays the return on plus, the other on minus. What joins them gets hot.',
        cure: 'Give each controller an isolated supply of its own, or a return of its own.',
        source: 'the engine; NEM 609:2010 cl. 6.1, outputs galvanically apart',
        board: { yard, scene }
      }
    : {
        grade: 'fine',
        what: 'Two controllers share the return; each has an isolated supply, so they meet there only.',
        where,
        amount: `${ampsText(amps(source))} from one into the other, knobs turned opposite ways`,
        why: 'The return carries what both send home; nothing drives a current round both.',
        cure: 'It holds as long as both supplies are isolated: never join them anywhere else.',
        source: 'the engine; NEM 609:2010 cl. 6.1, outputs galvanically apart',
        board: { yard, scene }
      };
}

/** Whether two controllers may share one return: with isolated supplies only. */
export const controllers: Check = {
  id: 'controllers',
  title: 'May two controllers share the return?',
  run: (yard) => (yard.second ? [finding(yard)] : [])
};
