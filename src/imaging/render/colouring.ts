/** Pigment laid on by hand: dry powder within the brush's outlines, heavier where the picture is light. */
import type { Plane } from '../plane.ts';
import { cloudyNoise } from './noise.ts';
import { sampleCubic } from './particles.ts';
import type { PlateRow } from './plate-row.ts';
import type { Plate, Tint } from './plate.ts';
import { seedOf } from './seeded.ts';

/** What a brush touched, pixels of its mask: beyond it nothing of the mask is above 0. */
interface Touched {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Fills in pigment of the rows of one capture. Needs the places and the coverage of the row. */
export function colourRows(plate: Plate): (line: PlateRow) => void {
  const seed = seedOf('pigment', plate.seed);
  const touched = plate.tints.map(({ mask }) => touchedPart(mask));
  return (line) => {
    line.tint.fill(0);
    plate.tints.forEach((tint, k) => {
      tintRow(line, plate, tint, touched[k], seed);
    });
  };
}

/** With room for the samples that interpolation reaches. */
function touchedPart({ width, height, data }: Plane): Touched {
  let [left, top, right, bottom] = [width, height, -1, -1];
  for (let y = 0, i = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, i += 1) {
      if (data[i] === 0) continue;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      bottom = y;
    }
  }
  return { left: left - 2, top: top - 2, right: right + 2, bottom: bottom + 2 };
}

function tintRow(line: PlateRow, plate: Plate, tint: Tint, touched: Touched, seed: number): void {
  const [r, g, b] = line.tintColour;
  const { left, top, width, height } = plate.pictures[0];
  const { mask, colour, strength } = tint;
  for (let i = 0; i < line.length; i += 1) {
    const u = (line.x[i] - left) / width;
    const v = (line.y[i] - top) / height;
    if (u < 0 || v < 0 || u > 1 || v > 1) continue;
    const px = (plate.laterallyReversed ? 1 - u : u) * mask.width - 0.5;
    const py = v * mask.height - 0.5;
    if (px < touched.left || px > touched.right || py < touched.top || py > touched.bottom) {
      continue;
    }
    const brushed = sampleCubic(mask, px, py);
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
