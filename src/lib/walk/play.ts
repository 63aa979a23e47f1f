import type { Play } from '../lesson';
import { answer, QuestionError } from '../predict';
import { BorderError, PlaceError, RefusedError } from '../yard';
import type { WalkStep, Walkthrough } from './walkthrough';

/** A step of a walkthrough as the player of lessons takes it. */
export interface StepPlay {
  readonly play: Play;
  /** Why its call cannot be put; empty when it can, or there is none. */
  readonly trouble: string;
}

/** Why the engine cannot answer the call of a step; empty when it can. */
function troubleOf({ yard }: Walkthrough, { scene, call }: WalkStep): string {
  try {
    if (call) answer(call.question, yard, scene);
    return '';
  } catch (error) {
    const known = [BorderError, PlaceError, RefusedError, QuestionError];
    if (!known.some((kind) => error instanceof kind)) throw error;
    return (error as Error).message;
  }
}

/** A step of a walkthrough, its call left out where the engine cannot answer it. */
export function stepPlay(walk: Walkthrough, index: number): StepPlay {
  const step = walk.steps[index] as WalkStep;
  const { heading, scene, show, call } = step;
  const trouble = troubleOf(walk, step);
  const drawn = { mirrored: false, order: [] };
  return {
    trouble,
    play: {
      heading,
      board: {
        sides: [{ title: '', yard: walk.yard, scene, drawn }],
        show: show.some((view) => view !== 'diagram') ? show : ['rows', ...show],
        yours: 0,
        tools: []
      },
      ...(call &&
        trouble === '' && {
          call: { id: `walk/${index + 1}`, ...call, wrong: {}, opener: false }
        }),
      ideas: {},
      calls: ''
    }
  };
}
