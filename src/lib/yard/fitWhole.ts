import { apply } from './apply';
import { BorderError } from './border';
import { PlaceError } from './runs';
import { fit, type Scene } from './scene';
import type { Yard } from './yard';

/**
 * Fits an admitted scene to its yard, and finds every place that its edits name.
 * @throws BorderError
 */
export function fitWhole(yard: Yard, scene: Parameters<typeof fit>[2]): Scene {
  const whole = fit('scene', yard, scene);
  try {
    apply(yard, whole);
  } catch (error) {
    if (!(error instanceof PlaceError)) throw error;
    const allowed = 'places of this yard, each once';
    throw new BorderError('scene', [{ path: ['edits'], met: `'${error.met}'`, allowed }]);
  }
  return whole;
}
