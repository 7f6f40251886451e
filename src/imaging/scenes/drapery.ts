/** Cloth that hangs in folds before the camera: a relief over an upright plane. */
import { noise } from './noise.ts';
import { modelled, type Solid, type Surface } from './solid.ts';

/** Points per metre at which the folds are tabulated: folds are centimetres wide. */
const perMetre = 160;

export interface Hanging {
  /** x from left to right, y from bottom to top, metres. */
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  /** The plane that it hangs in, z. */
  readonly depth: number;
  readonly foldWidth: number;
  readonly foldDepth: number;
  /** Where folds run together at the top, x. */
  readonly gather: number;
}

export function drapery(cloth: Hanging, surface: Surface, seed: number): Solid {
  const { left, right, bottom, top, depth, foldWidth, foldDepth, gather } = cloth;
  const columns = Math.ceil((right - left) * perMetre) + 2;
  const rows = Math.ceil((top - bottom) * perMetre) + 2;
  const face = new Float32Array(columns * rows);
  for (let r = 0; r < rows; r++) {
    const high = r / perMetre / (top - bottom);
    const spread = 1 - 0.55 * high * high;
    for (let c = 0; c < columns; c++) {
      const u = (left + c / perMetre - gather) / spread;
      const sway = foldWidth * 0.9 * noise(u / foldWidth / 2.2, high * 1.6, 0, seed);
      const phase = (u + sway) / foldWidth;
      const strength = 0.55 + 0.45 * noise(phase * 0.45, high * 1.2, 5, seed + 1);
      const wave = Math.sin(2 * Math.PI * phase) + 0.32 * Math.sin(4 * Math.PI * phase + 1);
      const soft = 0.35 * noise(phase * 1.7, high * 3.2, 9, seed + 2);
      face[r * columns + c] = depth - foldDepth * (strength * wave + soft);
    }
  }
  return modelled(
    [left, bottom, depth - foldDepth * 1.8],
    [right, top, depth + foldDepth * 1.8],
    surface,
    (x, y, z) => {
      const u = Math.min(columns - 2, Math.max(0, (x - left) * perMetre));
      const v = Math.min(rows - 2, Math.max(0, (y - bottom) * perMetre));
      const iu = Math.floor(u);
      const iv = Math.floor(v);
      const a = iv * columns + iu;
      const tu = u - iu;
      const lower = face[a] + (face[a + 1] - face[a]) * tu;
      const upper = face[a + columns] + (face[a + columns + 1] - face[a + columns]) * tu;
      // The slope of a fold reaches about two, so a step of 0.42 of the depth is safe.
      return 0.42 * (lower + (upper - lower) * (v - iv) - z);
    },
  );
}
