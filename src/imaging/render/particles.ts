/**
 * The picture itself: how densely the plate is covered by particles that scatter light.
 *
 * Highlights are densely covered, shadows are bare mirror. Seen closely the coverage is a
 * little uneven, and that unevenness belongs to the plate: every capture shows the same.
 */
import type { Plane } from '../plane.ts';
import { cloudyNoise, fillSlowly, fillWithNoise } from './noise.ts';
import type { PlateRow } from './plate-row.ts';
import type { Picture, Plate } from './plate.ts';
import { seedOf } from './seeded.ts';

/** Coverage where the scene was black: the fog of any plate. */
const fog = 0.012;

/** Cells of the surface's unevenness per mm; coarser than a pixel of any capture here. */
const grainPerMillimetre = 13;

const slowStep = 12;

/** Scratch space of {@link coverRow}: two rows. */
export interface CoverSpace {
  readonly mottle: Float64Array;
  readonly grain: Float64Array;
}

/** Fill in coverage. Needs the places of the row. */
export function coverRow(line: PlateRow, plate: Plate, { mottle, grain }: CoverSpace): void {
  const mottleSeed = seedOf('mottle', plate.seed);
  line.coverage.fill(0);
  fillSlowly(
    mottle,
    slowStep,
    (i) => 1 + 0.05 * cloudyNoise(line.x[i] * 0.25, line.y[i] * 0.25, mottleSeed, 2),
  );
  fillWithNoise(grain, line.x, line.y, grainPerMillimetre, seedOf('grain', plate.seed));
  for (const picture of plate.pictures) coverWithPicture(line, plate, picture);
  for (let i = 0; i < line.length; i += 1) {
    const covered = (line.coverage[i] + fog) * mottle[i] * (1 + 0.1 * grain[i]);
    line.coverage[i] = Math.min(0.98, covered * plate.density);
  }
}

function coverWithPicture(line: PlateRow, plate: Plate, picture: Picture): void {
  const { scene, left, top, width, height } = picture;
  const perX = scene.width / width;
  const perY = scene.height / height;
  const flip = plate.laterallyReversed;
  for (let i = 0; i < line.length; i += 1) {
    const u = line.x[i] - left;
    const v = line.y[i] - top;
    if (u < 0 || v < 0 || u > width || v > height) continue;
    const px = (flip ? width - u : u) * perX - 0.5;
    line.coverage[i] = Math.min(1, Math.max(0, sampleCubic(scene, px, v * perY - 0.5)));
  }
}

/**
 * Catmull-Rom cubic between samples; beyond the edge the last sample goes on.
 *
 * References
 * - Keys, R. (1981). Cubic convolution interpolation for digital image processing. IEEE Trans.
 *   ASSP 29(6), 1153-1160. doi:10.1109/TASSP.1981.1163711 (a = -1/2).
 */
export function sampleCubic(plane: Plane, x: number, y: number): number {
  const { width, height, data } = plane;
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const fx = x - ix;
  const fy = y - iy;
  const x0 = clamp(ix - 1, width);
  const x1 = clamp(ix, width);
  const x2 = clamp(ix + 1, width);
  const x3 = clamp(ix + 2, width);
  const a0 = ((2 - fx) * fx - 1) * fx * 0.5;
  const a1 = ((3 * fx - 5) * fx * fx + 2) * 0.5;
  const a2 = ((4 - 3 * fx) * fx + 1) * fx * 0.5;
  const a3 = (fx - 1) * fx * fx * 0.5;
  let sum = 0;
  for (let j = 0; j < 4; j += 1) {
    const row = clamp(iy - 1 + j, height) * width;
    const across =
      a0 * data[row + x0] + a1 * data[row + x1] + a2 * data[row + x2] + a3 * data[row + x3];
    sum += across * cubicWeight(j, fy);
  }
  return sum;
}

function cubicWeight(tap: number, t: number): number {
  if (tap === 0) return ((2 - t) * t - 1) * t * 0.5;
  if (tap === 1) return ((3 * t - 5) * t * t + 2) * 0.5;
  if (tap === 2) return ((4 - 3 * t) * t + 1) * t * 0.5;
  return (t - 1) * t * t * 0.5;
}

function clamp(index: number, size: number): number {
  return index < 0 ? 0 : index >= size ? size - 1 : index;
}
