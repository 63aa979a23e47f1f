import { findPoint, placed, type Instrument, type Run } from '../yard';
import type { Frame } from './frame';
import { HALF_GAUGE } from './frame';
import type { Point } from './geometry';
import { nodePoint } from './lines';
import type { LaidRun } from './run';

/** A test instrument under the rows, with its two leads. */
export interface LaidProbe {
  readonly id: string;
  readonly kind: Instrument;
  /** Middle of the instrument. */
  readonly at: Point;
  /** Where its probes are held, the first one's first. */
  readonly tips: readonly Point[];
  /** Its leads, as SVG path data. */
  readonly leads: readonly string[];
}

/** Room under the rows for test instruments, px. */
export const PROBE_ROOM = 78;
/** Radius of an instrument, px. */
export const PROBE_RADIUS = 15;
/** From a rail's east end to where probes touch it, px. */
const ON_RAIL = 24;

interface Ground {
  readonly runs: readonly Run[];
  readonly laid: readonly LaidRun[];
  readonly frame: Frame;
}

/** Where a point of the wiring lies in the rows. */
function spot(id: string, { runs, laid, frame }: Ground): Point {
  const [, rail, road] = /^(feed|return) rail (.+)$/.exec(id) ?? [];
  if (road !== undefined) {
    const side = rail === 'feed' ? HALF_GAUGE : -HALF_GAUGE;
    return { x: frame.rails.east - ON_RAIL, y: frame.rowY(road) + side };
  }
  const { node } = findPoint(runs, id);
  const part = id.replace(/ (panel|rail|fixed|deck) side$/, '');
  const glyph = laid.flatMap((each) => each.glyphs).find((each) => each.id === part);
  if (!glyph) return nodePoint(node, frame);
  const out = (glyph.width / 2 - 4) * (node === glyph.from ? -1 : 1);
  const turn = (glyph.angle * Math.PI) / 180;
  return {
    x: glyph.middle.x + out * Math.cos(turn),
    y: glyph.middle.y + out * Math.sin(turn)
  };
}

const lead = (tip: Point, at: Point, side: number): string => {
  const socket = { x: at.x + side * 8, y: at.y - PROBE_RADIUS };
  const sag = Math.min(60, (socket.y - tip.y) / 2);
  return `M${tip.x} ${tip.y}C${tip.x} ${tip.y + sag} ${socket.x} ${socket.y - 46} ${socket.x} ${socket.y}`;
};

/** Lays the test instruments side by side at height `y`, each joined to its two points. */
export function layProbes(ground: Ground, y: number): readonly LaidProbe[] {
  const runs = ground.runs.filter(({ held }) => held);
  return runs.map((run, index): LaidProbe => {
    const at = { x: (ground.frame.width * (2 * index + 1)) / (2 * runs.length), y };
    const tips = (run.held ?? []).map((id) => spot(id, ground));
    const kind = placed(run)[0]?.kind as Instrument;
    return { id: run.id, kind, at, tips, leads: tips.map((tip, n) => lead(tip, at, n * 2 - 1)) };
  });
}
