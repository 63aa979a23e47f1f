import { BorderError, fit, restood, vehicles, type Scene, type Yard } from '../../yard';

/** A board as it stands, its locos held still: what a step keeps. */
export const still = (scene: Scene): Scene =>
  restood(
    scene,
    Object.fromEntries(
      Object.entries(vehicles(scene)).map(([name, at]) => [name, { ...at, speed: 0 }])
    )
  );

/** The scene with a loco on another road, or taken away; words where it does not fit there. */
export function withLoco(
  yard: Yard,
  scene: Scene,
  loco: string,
  road: string
): { readonly ok: Scene } | { readonly wrong: string } {
  const { [loco]: _, ...others } = scene.locos;
  void _;
  const standing = { road, faces: 'east' as const, speed: 0, fallen: false };
  const locos = road === '' ? others : { ...others, [loco]: standing };
  try {
    return { ok: fit('scene', yard, { ...scene, locos: locos as Scene['locos'] }) };
  } catch (error) {
    if (!(error instanceof BorderError)) throw error;
    const [finding] = error.findings;
    return {
      wrong: `${loco} cannot stand there: met ${finding?.met}, allowed: ${finding?.allowed}.`
    };
  }
}
