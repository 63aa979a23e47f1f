import { hides, type Question } from '../predict';
import { act, apply, isProbe, probedRoads, vehicles, type Run } from '../yard';
import type { View } from './session.svelte';
import { unique } from './unique';

/** The roads that a run serves, or that the probes of an instrument touch. */
const roadsOfRun = (runs: readonly Run[], run: Run): readonly string[] =>
  isProbe(run.id) ? probedRoads(runs, run) : run.road === undefined ? [] : [run.road];

/** Roads and instruments of a yard which must not be told before the call, as the yard stands and as it will. */
export function untoldOn(question: Question, { yard, scene, reading }: View): readonly string[] {
  const all = hides(question);
  const lamps = all.filter((name) => name.startsWith('lamp '));
  const hidden = all.filter((name) => !lamps.includes(name));
  const after = question.do ? apply(yard, act(yard, scene, question.do)) : [];
  const asked = [reading.runs, after].flatMap((runs) =>
    runs
      .filter((run) => run.parts.some(({ id }) => hidden.includes(id)))
      .flatMap((run) => [run.id, ...roadsOfRun(runs, run)])
  );
  const standing = vehicles(scene);
  // What flows on any road can tell what an instrument shows.
  const told = asked.length > 0 ? Object.keys(standing) : hidden;
  const roads = unique([...told.flatMap((name) => standing[name]?.road ?? []), ...asked]);
  const instruments = reading.runs.flatMap((run) =>
    run.parts
      .filter(({ id, kind }) => kind === 'meter' || isProbe(id))
      .filter(({ id }) => asked.length > 0 || touches(reading.runs, run, roads, id))
      .map(({ id }) => id)
  );
  return unique([...roads, ...instruments, ...lamps]);
}

const touches = (runs: readonly Run[], run: Run, roads: readonly string[], id: string): boolean =>
  isProbe(id) && probedRoads(runs, run).some((road) => roads.includes(road));
