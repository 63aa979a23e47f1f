import { BorderError, fit, type Scene, type Yard } from '../../yard';

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
