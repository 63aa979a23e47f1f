import type { BoardData, Play } from '../lesson';
import type { Yard } from '../yard';
import { answerOf } from './answered';
import type { WalkStep, Walkthrough } from './walkthrough';

/** A step of a walkthrough as the player of lessons takes it. */
export interface StepPlay {
  readonly play: Play;
  /** Why its call cannot be put; empty when it can, or there is none. */
  readonly trouble: string;
}

/** The board of a step: a drawing stands above a circuit diagram. */
export const boardOf = (
  yard: Yard,
  { scene, show }: Pick<WalkStep, 'scene' | 'show'>
): BoardData => ({
  sides: [{ title: '', yard, scene, drawn: { mirrored: false, order: [] } }],
  show: show.some((view) => view !== 'diagram') ? show : ['rows', ...show],
  yours: 0,
  tools: []
});

/** A step of a walkthrough, its call left out where the engine cannot answer it. */
export function stepPlay({ yard, steps }: Walkthrough, index: number): StepPlay {
  const step = steps[index] as WalkStep;
  const { heading, scene, call } = step;
  const found = call && answerOf(yard, scene, call);
  const trouble = found && 'wrong' in found ? found.wrong : '';
  return {
    trouble,
    play: {
      heading,
      board: boardOf(yard, step),
      ...(call &&
        trouble === '' && {
          call: { id: `walk/${index + 1}`, ...call, wrong: {}, opener: false }
        }),
      ideas: {},
      calls: ''
    }
  };
}
