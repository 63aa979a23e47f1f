import {
  act,
  joinWords,
  RefusedError,
  trainsOf,
  trainWith,
  vehicles,
  vehicleWords,
  type Scene,
  type Yard
} from '../yard';
import { driveTo, isOver, start, TICKS_PER_SECOND, type Drive } from './drive';
import { gapWords } from './gapWords';
import type { Sequence, WorkingStep } from './sequence';
import { isDone } from './until';
import { way } from './way';

/** A drive that is not done by then is given up, s. */
const MOST_SECONDS = 120;
/** With the knob at centre every train stands by then, s. */
const STOP_SECONDS = 0.5;
/** How often a drive is looked at, s. */
const LOOK_SECONDS = 0.1;

/** What came of a step. */
export interface StepPlayed {
  /** The scene in which hands have done their part and the knob is turned. */
  readonly begun: Scene;
  /** How long it was driven, s. */
  readonly seconds: number;
  /** The scene at its end, the knob at centre. */
  readonly scene: Scene;
  /** What is amiss, in words; none where all went as it should. */
  readonly findings: readonly string[];
}

/** Plays a sequence step by step; it goes no further than a step in which something is amiss. */
export function playSequence(
  yard: Yard,
  scene: Scene,
  { steps }: Pick<Sequence, 'steps'>
): readonly StepPlayed[] {
  const played: StepPlayed[] = [];
  for (const step of steps) {
    const last = played.at(-1);
    if (last && last.findings.length > 0) break;
    played.push(playStep(yard, last?.scene ?? scene, step));
  }
  return played;
}

function playStep(yard: Yard, scene: Scene, step: WorkingStep): StepPlayed {
  try {
    const done = step.do ? act(yard, scene, step.do) : scene;
    const begun = step.drive === undefined ? done : act(yard, done, { controller: step.drive });
    const drive = driven(yard, begun, step);
    const seconds = drive.tick / TICKS_PER_SECOND;
    const findings = amiss(yard, { before: scene, drive, step });
    const still = start(act(yard, drive.scene, { controller: 0 }));
    return { begun, seconds, scene: driveTo(yard, still, STOP_SECONDS).scene, findings };
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error;
    return { begun: scene, seconds: 0, scene, findings: [error.why] };
  }
}

/** Drives until the step is done; a step without a drive is watched for a moment. */
function driven(yard: Yard, begun: Scene, { until = { seconds: 1 } }: WorkingStep): Drive {
  let drive = start(begun);
  for (let look = 1; look * LOOK_SECONDS <= MOST_SECONDS; look++) {
    drive = driveTo(yard, drive, look * LOOK_SECONDS);
    const stuck = !('seconds' in until) && look > 5 && isStill(drive.scene);
    if (stuck || isDone(yard, drive, until) || isOver(drive.scene)) break;
  }
  return drive;
}

/** Where nothing moves half a second after the hands are off, nothing will. */
const isStill = (scene: Scene): boolean =>
  Object.values(vehicles(scene)).every(({ speed }) => speed === 0);

interface Watched {
  readonly before: Scene;
  readonly drive: Drive;
  readonly step: WorkingStep;
}

function amiss(yard: Yard, { before, drive, step }: Watched): readonly string[] {
  const { scene, events } = drive;
  const fell = gapWords(yard, scene);
  if (fell !== '') return [fell];
  const { until } = step;
  const named = [...step.moves, ...(until && 'loco' in until ? [until.loco] : [])];
  const meant = named.map((name) => trainWith(scene, name)[0]);
  const others = trainsOf(scene).filter(
    ([root]) => !meant.includes(root) && way({ yard, before, after: scene }, root) !== 'stays'
  );
  const bumps = events.flatMap(({ kind, loco, other }) =>
    kind === 'bump' && !(until && 'meets' in until && until.meets === other)
      ? [`${vehicleWords(loco)} runs into ${other}.`]
      : []
  );
  const also = joinWords(
    others.map(([root]) => root),
    'and'
  );
  return [
    ...(others.length > 0 ? [`${also} ${others.length > 1 ? 'move' : 'moves'} too.`] : []),
    ...bumps,
    ...(until && 'loco' in until && !isDone(yard, drive, until)
      ? [`${until.loco} does not get there.`]
      : [])
  ];
}
