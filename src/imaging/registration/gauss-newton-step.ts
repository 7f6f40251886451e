/**
 * One robust step towards the map that makes two gradient fields the same.
 *
 * The slope of the difference is taken as the mean of both fields' slopes, which lets a step be
 * good to second order, and a pixel whose difference is large (a scratch seen in one capture
 * only, a glare) loses its weight. Products of slopes are first summed over small cells, because
 * the motion of all pixels of one cell is nearly the same.
 *
 * References
 * - Benhimane, S. and Malis, E. (2004). Real-time image-based tracking of planes using efficient
 *   second-order minimization. Proc. IROS 2004, 943-948. doi:10.1109/IROS.2004.1389474
 * - Baker, S. and Matthews, I. (2004). Lucas-Kanade 20 years on: a unifying framework. IJCV
 *   56(3), 221-255. doi:10.1023/B:VISI.0000011205.11775.fd
 */
import type { Homography } from '../conventions.ts';
import type { GradientField } from './gradient-field.ts';
import { compose, normalise } from './homography.ts';
import { laySigns, layOf } from './lay.ts';
import { solveInPlace } from './linear-system.ts';

/** 4: shift, turn and size. 6: affine. 8: homography. */
export type Freedom = 4 | 6 | 8;

/** Side of a cell, pixels. */
const cell = 8;
/** Samples this near to the edge have no slope. */
const margin = 3;
/** Typical shear and perspective that the prior allows for, in units of half the width. */
const priorWidth = 0.01;

/**
 * @param still Field of the base.
 * @param drawn Field of the moving capture drawn in the base frame by the present map.
 * @param prior The present map, to hold shear and perspective small, or null to let them go.
 * @returns The increment D of the map: the new map is `present * inverse(D)`. Null when the
 *   fields have no slope to work with.
 */
export function gaussNewtonStep(
  still: GradientField,
  drawn: GradientField,
  freedom: Freedom,
  prior: Homography | null,
): Homography | null {
  const { width, height } = still;
  const scale = width / 2;
  const spread = residualSpread(still, drawn);
  const normal = new Float64Array(freedom * freedom);
  const right = new Float64Array(freedom);
  for (let y0 = margin; y0 < height - margin; y0 += cell) {
    for (let x0 = margin; x0 < width - margin; x0 += cell) {
      const x1 = Math.min(width - margin, x0 + cell);
      const y1 = Math.min(height - margin, y0 + cell);
      const sums = cellSums(still, drawn, x0, y0, x1, y1, spread);
      const u = ((x0 + x1 - 1) / 2 - (width - 1) / 2) / scale;
      const v = ((y0 + y1 - 1) / 2 - (height - 1) / 2) / scale;
      addCell(normal, right, motion(freedom, u, v, scale), sums);
    }
  }
  if (prior && freedom >= 6) addPrior(normal, right, freedom, prior, width, height, spread);
  for (let p = 0; p < freedom; p += 1) normal[p * freedom + p] *= 1 + 1e-6;
  const z = solveInPlace(normal, right);
  if (!z || !z.every(Number.isFinite)) return null;
  return fromUnitFrame(increment(freedom, z), width, height);
}

/** Square of the median length of the difference; the scale of the Cauchy weight. */
function residualSpread(still: GradientField, drawn: GradientField): number {
  const { width, height } = still;
  const lengths: number[] = [];
  for (let y = margin; y < height - margin; y += 5) {
    for (let x = margin; x < width - margin; x += 5) {
      const i = y * width + x;
      if (!(still.usable[i] & drawn.usable[i])) continue;
      lengths.push(Math.hypot(drawn.re[i] - still.re[i], drawn.im[i] - still.im[i]));
    }
  }
  const sorted = Float32Array.from(lengths).sort();
  return (sorted[sorted.length >> 1] || 0.1) ** 2 + 1e-6;
}

/** Weighted sums of products of slopes (gxx, gxy, gyy) and of slope times difference. */
type CellSums = readonly [gxx: number, gxy: number, gyy: number, rx: number, ry: number];

function cellSums(
  still: GradientField,
  drawn: GradientField,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  spread: number,
): CellSums {
  const w = still.width;
  const { re: fr, im: fi, usable: fu } = still;
  const { re: mr, im: mi, usable: mu } = drawn;
  let gxx = 0;
  let gxy = 0;
  let gyy = 0;
  let rx = 0;
  let ry = 0;
  for (let y = y0; y < y1; y += 1) {
    for (let x = x0, i = y * w + x0; x < x1; x += 1, i += 1) {
      if (!(fu[i] & mu[i])) continue;
      const dr = mr[i] - fr[i];
      const di = mi[i] - fi[i];
      const weight = 1 / (1 + (dr * dr + di * di) / spread);
      const ax = 0.25 * (fr[i + 1] - fr[i - 1] + mr[i + 1] - mr[i - 1]);
      const ay = 0.25 * (fr[i + w] - fr[i - w] + mr[i + w] - mr[i - w]);
      const bx = 0.25 * (fi[i + 1] - fi[i - 1] + mi[i + 1] - mi[i - 1]);
      const by = 0.25 * (fi[i + w] - fi[i - w] + mi[i + w] - mi[i - w]);
      gxx += weight * (ax * ax + bx * bx);
      gxy += weight * (ax * ay + bx * by);
      gyy += weight * (ay * ay + by * by);
      rx += weight * (ax * dr + bx * di);
      ry += weight * (ay * dr + by * di);
    }
  }
  return [gxx, gxy, gyy, rx, ry];
}

/** How the point (u, v), in half widths from the centre, moves in pixels per parameter. */
function motion(freedom: Freedom, u: number, v: number, s: number): readonly [number[], number[]] {
  if (freedom === 4) {
    return [
      [s * u, -s * v, s, 0],
      [s * v, s * u, 0, s],
    ];
  }
  const x = [s * u, s * v, s, 0, 0, 0];
  const y = [0, 0, 0, s * u, s * v, s];
  if (freedom === 8) {
    x.push(-s * u * u, -s * u * v);
    y.push(-s * u * v, -s * v * v);
  }
  return [x, y];
}

function addCell(
  normal: Float64Array,
  right: Float64Array,
  [mx, my]: readonly [number[], number[]],
  [gxx, gxy, gyy, rx, ry]: CellSums,
): void {
  const n = right.length;
  for (let p = 0; p < n; p += 1) {
    const px = mx[p] * gxx + my[p] * gxy;
    const py = mx[p] * gxy + my[p] * gyy;
    for (let q = 0; q < n; q += 1) normal[p * n + q] += px * mx[q] + py * my[q];
    right[p] += mx[p] * rx + my[p] * ry;
  }
}

/** A camera on a stand sees a plate nearly square on: pull shear and perspective towards none. */
function addPrior(
  normal: Float64Array,
  right: Float64Array,
  n: number,
  map: Homography,
  width: number,
  height: number,
  spread: number,
): void {
  const [sx, sy] = laySigns(layOf(map));
  const flip: Homography = [sx, 0, 0, 0, sy, 0, 0, 0, 1];
  const t = normalise(compose(flip, toUnitFrame(map, width, height)));
  const strength = (1.5 * spread) / priorWidth ** 2;
  const stretch = t[0] - t[4];
  const shear = t[1] + t[3];
  normal[0] += strength;
  normal[4 * n + 4] += strength;
  normal[4] -= strength;
  normal[4 * n] -= strength;
  right[0] += strength * stretch;
  right[4] -= strength * stretch;
  normal[n + 1] += strength;
  normal[3 * n + 3] += strength;
  normal[n + 3] += strength;
  normal[3 * n + 1] += strength;
  right[1] += strength * shear;
  right[3] += strength * shear;
  if (n !== 8) return;
  for (const p of [6, 7]) {
    normal[p * n + p] += strength;
    right[p] += strength * t[p];
  }
}

function increment(freedom: Freedom, z: Float64Array): Homography {
  if (freedom === 4) return [1 + z[0], -z[1], z[2], z[1], 1 + z[0], z[3], 0, 0, 1];
  const [h6, h7] = freedom === 8 ? [z[6], z[7]] : [0, 0];
  return [1 + z[0], z[1], z[2], z[3], 1 + z[4], z[5], h6, h7, 1];
}

/** From half widths about the centre back to pixels. */
export function fromUnitFrame(m: Homography, width: number, height: number): Homography {
  const { to, from } = unitFrame(width, height);
  return compose(compose(from, m), to);
}

function toUnitFrame(m: Homography, width: number, height: number): Homography {
  const { to, from } = unitFrame(width, height);
  return compose(compose(to, m), from);
}

function unitFrame(width: number, height: number): { to: Homography; from: Homography } {
  const s = width / 2;
  const cx = (width - 1) / 2;
  const cy = (height - 1) / 2;
  return {
    to: [1 / s, 0, -cx / s, 0, 1 / s, -cy / s, 0, 0, 1],
    from: [s, 0, cx, 0, s, cy, 0, 0, 1],
  };
}
