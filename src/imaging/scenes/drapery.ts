/** Cloth that hangs in folds before the camera. */
import { noise } from './noise.ts';
import { modelled, type Solid, type Surface } from './solid.ts';

/**
 * A hanging cloth in the plane z = depth, between x = left and right, from `bottom` to `top`.
 * Folds are deep at the bottom and gathered towards the point (gatherX, top).
 */
export function drapery(
  [left, right, bottom, top]: readonly [number, number, number, number],
  depth: number,
  foldWidth: number,
  foldDepth: number,
  gatherX: number,
  surface: Surface,
  seed: number,
): Solid {
  const tall = top - bottom;
  return modelled(
    [left, bottom, depth - foldDepth * 2.2],
    [right, top, depth + foldDepth * 2.2],
    surface,
    (x, y, z) => {
      const high = (y - bottom) / tall;
      // Folds run together towards the gather.
      const spread = 1 - 0.55 * high * high;
      const u = (x - gatherX) / spread;
      const sway = foldWidth * 0.9 * noise(u / foldWidth / 2.2, high * 1.6, 0, seed);
      const phase = (u + sway) / foldWidth;
      const strength = 0.55 + 0.45 * noise(phase * 0.45, high * 1.2, 5, seed + 1);
      const wave = Math.sin(2 * Math.PI * phase);
      const soft = 0.35 * noise(phase * 1.7, high * 3.2, 9, seed + 2);
      const face =
        depth - foldDepth * (strength * (wave + 0.32 * Math.sin(4 * Math.PI * phase + 1)) + soft);
      // The slope of a fold reaches about two, so a step of 0.42 of the depth is safe.
      return 0.42 * (face - z);
    },
    0.9,
  );
}
