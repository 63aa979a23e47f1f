import * as v from 'valibot';
import { quayWorking } from '../motion';
import {
  admit,
  EditSchema,
  fit,
  PlaceError,
  read,
  SceneSchema,
  YardSchema,
  type Edit,
  type Scene,
  type Yard
} from '../yard';
import { placedError, readBlock, type Block, type Source } from './block';
import { asUsual, DrawnSchema, misfit, type Redrawn } from './drawn';
import { LessonError } from './error';

const views = ['rows', 'plan', 'panel', 'diagram'] as const;
export type ViewName = (typeof views)[number];

const { version: _, ...sceneEntries } = SceneSchema.entries;
void _;
/** The keys that state a start scene. */
export { sceneEntries };

/** The start scene that a block states, without what else it says. */
const stated = <B extends { readonly [K in keyof typeof sceneEntries]?: unknown }>(block: B) =>
  Object.fromEntries(
    Object.keys(sceneEntries).map((key) => [key, block[key as keyof typeof sceneEntries]])
  ) as Pick<B, keyof typeof sceneEntries>;

const BoardSchema = v.strictObject({
  yard: v.optional(YardSchema, {}),
  ...sceneEntries,
  /** Views shown, the first on top; a circuit diagram is folded up under the others. */
  show: v.optional(
    v.pipe(
      v.array(v.picklist(views, 'rows, plan, panel or diagram')),
      v.check((list) => list.some((view) => view !== 'diagram'), 'rows, plan or panel')
    ),
    ['rows']
  ),
  /** A road whose loop is traced in numbered steps. */
  trace: v.optional(v.string('the letter of a road')),
  /** How many of the last steps of the trace the learner finds. */
  yours: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(8)), 0),
  /** Wire edits offered on the panel. */
  tools: v.optional(v.array(EditSchema, 'a list of edits'), []),
  /** A working played below the board, which brings its own yard and scene: the demo yard's (`true` or `quay`). */
  working: v.optional(
    v.pipe(
      v.union([v.literal(true), v.literal('quay')], 'true or quay'),
      v.transform(() => 'quay' as const)
    )
  ),
  drawn: v.optional(DrawnSchema),
  /** Name of this yard where it is one of a pair. */
  title: v.optional(v.string()),
  /** A second yard beside it, which differs in this only. */
  pair: v.optional(v.strictObject({ title: v.string(), yard: v.record(v.string(), v.unknown()) }))
});

/** One yard of a board with its start scene. */
export interface Side {
  readonly title: string;
  readonly yard: Yard;
  readonly scene: Scene;
  readonly drawn: Redrawn;
}

/** A board as drawn and played: one side, or a pair. */
export interface BoardData {
  readonly sides: readonly Side[];
  readonly show: readonly ViewName[];
  readonly trace?: string | undefined;
  readonly yours: number;
  readonly working?: 'quay' | undefined;
  readonly tools: readonly Edit[];
}

/**
 * Reads a board block.
 * @throws LessonError
 */
export function readBoard(source: Source): BoardData {
  const block = readBlock(source, BoardSchema);
  const { show, trace, yours, tools, working } = block.value;
  const sides = working ? [workingSide()] : readSides(source, block);
  const roads = Object.values((sides[0] as Side).scene.locos).map((at) => at.road);
  if (trace !== undefined && !roads.includes(trace)) {
    const allowed = `a road with a loco: ${roads.join(', ') || 'there is none'}`;
    throw new LessonError(
      source.file,
      block.lineOf(['trace']),
      `\`trace\` of road '${trace}'`,
      allowed
    );
  }
  return { sides, show, yours, tools, trace, working };
}

/** The yard and the scene in which the demo working begins. */
function workingSide(): Side {
  const yard = admit('yard', YardSchema, quayWorking.yard);
  const scene = admit('scene', SceneSchema, quayWorking.sequence.scene);
  return { title: '', yard, scene: fit('scene', yard, scene), drawn: asUsual };
}

type BoardBlock = Block<v.InferOutput<typeof BoardSchema>>;

function readSides(source: Source, block: BoardBlock): readonly Side[] {
  const { yard, title, pair } = block.value;
  const first = side(source, block, { title: title ?? '', yard });
  if (!pair) return [first];
  try {
    const other = admit('pair', YardSchema, { ...yard, ...pair.yard });
    return [first, side(source, block, { title: pair.title, yard: other })];
  } catch (error) {
    throw placedError(error, source.file, () => block.lineOf(['pair', 'yard']));
  }
}

function side(
  source: Source,
  block: BoardBlock,
  { title, yard }: { title: string; yard: Yard }
): Side {
  const place = { file: source.file, lineOf: block.lineOf };
  const scene = fitted(place, yard, { version: 1, ...stated(block.value) });
  return { title, yard, scene, drawn: fittedRows(place, yard, block.value.drawn) };
}

/**
 * How the rows of a yard are drawn.
 * @throws LessonError when the order of rows does not fit the yard.
 */
export function fittedRows(
  { file, lineOf }: Place,
  yard: Yard,
  drawn: Redrawn | undefined
): Redrawn {
  const wrong = drawn && misfit(yard, drawn);
  if (wrong) throw new LessonError(file, lineOf(['drawn', 'order']), wrong.met, wrong.allowed);
  return drawn ?? asUsual;
}

/** A file with the way back from a key to its line. */
type Place = Pick<Block<unknown>, 'lineOf'> & { readonly file: string };

/** Fits a scene to its yard and reads it once, so that a wrong name is found with its line. */
export function fitted(
  { file, lineOf }: Place,
  yard: Yard,
  scene: Parameters<typeof fit>[2]
): Scene {
  try {
    const whole = fit('scene', yard, scene);
    read(yard, whole);
    return whole;
  } catch (error) {
    if (error instanceof PlaceError) {
      throw new LessonError(
        file,
        lineOf(['edits']),
        `'${error.met}' in \`edits\``,
        error.allowed.join(', ')
      );
    }
    throw placedError(error, file, lineOf);
  }
}

/** The side's title where there is a pair to tell apart. */
export const titleOf = (board: BoardData, side: Side): string | undefined =>
  board.sides.length > 1 ? side.title : undefined;
