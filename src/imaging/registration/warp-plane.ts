/**
 * Drawing one capture in the frame of another, for comparison only: log-luminance, masked.
 *
 * References
 * - Keys, R. G. (1981). Cubic convolution interpolation for digital image processing. IEEE
 *   Trans. ASSP 29(6), 1153-1160. doi:10.1109/TASSP.1981.1163711 (with a = -1/2).
 */
import type { Homography } from '../conventions.ts';
import type { MaskedPlane } from './masked-plane.ts';

/**
 * @param toSource Takes a pixel of the result to the source plane.
 * @param interpolation `linear` between 2 x 2 samples or `cubic` between 4 x 4.
 * @returns A plane whose samples outside of the source repeat its edge and are not usable.
 */
export function warpPlane(
  source: MaskedPlane,
  toSource: Homography,
  width: number,
  height: number,
  interpolation: 'linear' | 'cubic',
): MaskedPlane {
  const data = new Float32Array(width * height);
  const usable = new Uint8Array(width * height);
  const { data: d, usable: u, width: sw, height: sh } = source;
  const cubic = interpolation === 'cubic';
  for (let y = 0; y < height; y += 1) {
    let px = toSource[1] * y + toSource[2];
    let py = toSource[4] * y + toSource[5];
    let pw = toSource[7] * y + toSource[8];
    const end = (y + 1) * width;
    for (
      let o = y * width;
      o < end;
      o += 1, px += toSource[0], py += toSource[3], pw += toSource[6]
    ) {
      const sx = px / pw;
      const sy = py / pw;
      const ix = Math.floor(sx);
      const iy = Math.floor(sy);
      if (!(ix >= 1 && iy >= 1 && ix < sw - 2 && iy < sh - 2 && pw > 0)) {
        data[o] = d[clamp(iy, sh) * sw + clamp(ix, sw)];
        continue;
      }
      const i = iy * sw + ix;
      data[o] = cubic ? cubicAt(d, sw, i, sx - ix, sy - iy) : linearAt(d, sw, i, sx - ix, sy - iy);
      usable[o] = u[i] & u[i + 1] & u[i + sw] & u[i + sw + 1];
    }
  }
  return { width, height, data, usable };
}

function clamp(i: number, length: number): number {
  // A point behind the horizon has no finite place; any sample does, it is not usable.
  return i >= 0 ? Math.min(i, length - 1) : 0;
}

/** Between the sample at index i and its right and lower neighbours; fx and fy are 0 to 1. */
export function linearAt(
  d: Float32Array,
  width: number,
  i: number,
  fx: number,
  fy: number,
): number {
  return (
    (d[i] * (1 - fx) + d[i + 1] * fx) * (1 - fy) +
    (d[i + width] * (1 - fx) + d[i + width + 1] * fx) * fy
  );
}

function cubicAt(d: Float32Array, width: number, i: number, fx: number, fy: number): number {
  const a0 = -0.5 * fx * (1 - fx) * (1 - fx);
  const a1 = 1 - 2.5 * fx * fx + 1.5 * fx * fx * fx;
  const a3 = -0.5 * fx * fx * (1 - fx);
  const a2 = 1 - a0 - a1 - a3;
  const b0 = -0.5 * fy * (1 - fy) * (1 - fy);
  const b1 = 1 - 2.5 * fy * fy + 1.5 * fy * fy * fy;
  const b3 = -0.5 * fy * fy * (1 - fy);
  const b2 = 1 - b0 - b1 - b3;
  let j = i - width - 1;
  const r0 = a0 * d[j] + a1 * d[j + 1] + a2 * d[j + 2] + a3 * d[j + 3];
  j += width;
  const r1 = a0 * d[j] + a1 * d[j + 1] + a2 * d[j + 2] + a3 * d[j + 3];
  j += width;
  const r2 = a0 * d[j] + a1 * d[j + 1] + a2 * d[j + 2] + a3 * d[j + 3];
  j += width;
  const r3 = a0 * d[j] + a1 * d[j + 1] + a2 * d[j + 2] + a3 * d[j + 3];
  return b0 * r0 + b1 * r1 + b2 * r2 + b3 * r3;
}
