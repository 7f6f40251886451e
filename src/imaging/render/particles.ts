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
  const r0 = clamp(iy - 1, height) * width;
  const r1 = clamp(iy, height) * width;
  const r2 = clamp(iy + 1, height) * width;
  const r3 = clamp(iy + 2, height) * width;
  const a0 = ((2 - fx) * fx - 1) * fx * 0.5;
  const a1 = ((3 * fx - 5) * fx * fx + 2) * 0.5;
  const a2 = ((4 - 3 * fx) * fx + 1) * fx * 0.5;
  const a3 = (fx - 1) * fx * fx * 0.5;
  const b0 = ((2 - fy) * fy - 1) * fy * 0.5;
  const b1 = ((3 * fy - 5) * fy * fy + 2) * 0.5;
  const b2 = ((4 - 3 * fy) * fy + 1) * fy * 0.5;
  const b3 = (fy - 1) * fy * fy * 0.5;
  return (
    (a0 * data[r0 + x0] + a1 * data[r0 + x1] + a2 * data[r0 + x2] + a3 * data[r0 + x3]) * b0 +
    (a0 * data[r1 + x0] + a1 * data[r1 + x1] + a2 * data[r1 + x2] + a3 * data[r1 + x3]) * b1 +
    (a0 * data[r2 + x0] + a1 * data[r2 + x1] + a2 * data[r2 + x2] + a3 * data[r2 + x3]) * b2 +
    (a0 * data[r3 + x0] + a1 * data[r3 + x1] + a2 * data[r3 + x2] + a3 * data[r3 + x3]) * b3
  );
}

function clamp(index: number, size: number): number {
  return index < 0 ? 0 : index >= size ? size - 1 : index;
}
