/** Pigment laid on by hand: dry powder within the brush's outlines, heavier where the picture is light. */
import { cloudyNoise } from './noise.ts';
import { sampleCubic } from './particles.ts';
import type { PlateRow } from './plate-row.ts';
import type { Plate, Tint } from './plate.ts';
import { seedOf } from './seeded.ts';

/** Fill in pigment. Needs the places and the coverage of the row. */
export function colourRow(line: PlateRow, plate: Plate): void {
  line.tint.fill(0);
  const seed = seedOf('pigment', plate.seed);
  for (const tint of plate.tints) tintRow(line, plate, tint, seed);
}

function tintRow(line: PlateRow, plate: Plate, tint: Tint, seed: number): void {
  const [r, g, b] = line.tintColour;
  const { left, top, width, height } = plate.pictures[0];
  const { mask, colour, strength } = tint;
  for (let i = 0; i < line.length; i += 1) {
    const u = (line.x[i] - left) / width;
    const v = (line.y[i] - top) / height;
    if (u < 0 || v < 0 || u > 1 || v > 1) continue;
    const px = (plate.laterallyReversed ? 1 - u : u) * mask.width - 0.5;
    const brushed = sampleCubic(mask, px, v * mask.height - 0.5);
    if (brushed < 0.004) continue;
    const powder = 1 + 0.35 * cloudyNoise(line.x[i] * 4, line.y[i] * 4, seed, 3);
    const lit = Math.min(1, 0.45 + (1.2 * line.coverage[i]) / plate.density);
    const share = Math.min(1, strength * brushed * powder * lit);
    if (share <= line.tint[i]) continue;
    line.tint[i] = share;
    r[i] = colour[0];
    g[i] = colour[1];
    b[i] = colour[2];
  }
}
