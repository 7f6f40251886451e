/**
 * Whether a frame of a bracket moved against another: a stand that had not come to rest, a
 * shutter that shook. Windows spread over the picture are found by phase correlation and refined
 * by least squares on the light that both frames hold; the median over the windows is the shift.
 *
 * References
 * - Kuglin, C. D. and Hines, D. C. (1975). The phase correlation image alignment method. Proc.
 *   IEEE Int. Conf. on Cybernetics and Society, 163-165.
 * - Lucas, B. D. and Kanade, T. (1981). An iterative image registration technique with an
 *   application to stereo vision. Proc. IJCAI, 674-679.
 */
import { median, robustDeviation } from '../inspect/quantile.ts';
import type { Estimate, Plane } from '../plane.ts';
import { gaussianBlur } from '../registration/gaussian-blur.ts';
import type { MaskedPlane } from '../registration/masked-plane.ts';
import { createCorrelator, type Correlator } from '../registration/phase-correlation.ts';
import { tileFields, tileLowPass, tilePeaks } from '../registration/tile-shifts.ts';

/** One frame's luminance in one window; square, its side a power of two. Linear, 1 is full. */
export type ShiftWindow = Plane;

export interface FrameShift {
  /** What lies at (x, y) in the first frame lies at (x + dx, y + dy) in the second, pixels. */
  readonly dx: number;
  readonly dy: number;
  /** Robust deviation of the windows from it, pixels. */
  readonly spread: number;
  readonly windows: number;
}

export interface FrameShiftOptions {
  readonly clip: number;
  /** Second exposure over first. */
  readonly ratio: number;
}

/** Largest shift looked for, pixels. */
const reach = 16;
/** Height of a correlation peak, in standard deviations, below which it is no peak. */
const leastPeak = 6;
const fewestWindows = 3;
/** Signal below which noise speaks, of the frame that has less of it. */
const low = 0.004;
const smoothing = 1.2;

export function frameShift(
  first: readonly ShiftWindow[],
  second: readonly ShiftWindow[],
  options: FrameShiftOptions,
): Estimate<FrameShift> {
  const correlator = createCorrelator(first[0].width, tileLowPass);
  const found = first.flatMap((window, k) => windowShift(window, second[k], options, correlator));
  if (found.length < fewestWindows) {
    return {
      ok: false,
      reason: `only ${found.length} of ${first.length} places show detail that both frames hold`,
    };
  }
  const dx = median(found.map((f) => f[0]));
  const dy = median(found.map((f) => f[1]));
  const spread = robustDeviation(found.flatMap((f) => [f[0] - dx, f[1] - dy]));
  return { ok: true, value: { dx, dy, spread, windows: found.length } };
}

function windowShift(
  first: ShiftWindow,
  second: ShiftWindow,
  { clip, ratio }: FrameShiftOptions,
  correlator: Correlator,
): (readonly [number, number])[] {
  // Both in the light of the first, and only where both exposures hold it.
  const [from, to] = [low * Math.max(1, 1 / ratio), clip * Math.min(1, 1 / ratio)];
  const a = logPlane(first, 1, from, to);
  const b = logPlane(second, ratio, from, to);
  const peaks = tilePeaks(tileFields(a), tileFields(b), correlator, 0, 0, { reach, peaks: 1 });
  if (!peaks || peaks.length === 0 || peaks[0].z < leastPeak) return [];
  return refine(a, b, peaks[0].dx, peaks[0].dy);
}

function logPlane(window: ShiftWindow, ratio: number, from: number, to: number): MaskedPlane {
  const { width, height, data } = window;
  const usable = new Uint8Array(data.length);
  const logs = new Float32Array(data.length);
  for (let i = 0; i < data.length; i += 1) {
    const light = data[i] / ratio;
    usable[i] = light < 0.95 * to ? 1 : 0;
    // Black is not left out, only flattened: a dark ground has no noise of its own then.
    logs[i] = Math.log(Math.min(to, Math.max(from, light)));
  }
  return { width, height, data: logs, usable };
}

/** Gauss and Newton's steps for a shift, on smoothed logarithms where both planes are usable. */
function refine(
  a: MaskedPlane,
  b: MaskedPlane,
  startX: number,
  startY: number,
): (readonly [number, number])[] {
  const { width, height } = a;
  const still = gaussianBlur(a.data, width, height, smoothing);
  const moved = gaussianBlur(b.data, width, height, smoothing);
  let [dx, dy] = [startX, startY];
  const margin = reach + 4;
  for (let round = 0; round < 6; round += 1) {
    let [xx, xy, yy, xd, yd] = [0, 0, 0, 0, 0];
    const [left, top] = [Math.floor(dx), Math.floor(dy)];
    const [fx, fy] = [dx - left, dy - top];
    for (let y = margin; y < height - margin; y += 1) {
      for (let x = margin; x < width - margin; x += 1) {
        const i = y * width + x;
        const j = (y + top) * width + x + left;
        if (!a.usable[i] || !b.usable[j]) continue;
        const value =
          (moved[j] * (1 - fx) + moved[j + 1] * fx) * (1 - fy) +
          (moved[j + width] * (1 - fx) + moved[j + width + 1] * fx) * fy;
        const gx = (still[i + 1] - still[i - 1]) / 2;
        const gy = (still[i + width] - still[i - width]) / 2;
        const off = value - still[i];
        xx += gx * gx;
        xy += gx * gy;
        yy += gy * gy;
        xd += gx * off;
        yd += gy * off;
      }
    }
    const determinant = xx * yy - xy * xy;
    if (!(determinant > 1e-6 * xx * yy)) return [];
    const stepX = (xd * yy - yd * xy) / determinant;
    const stepY = (yd * xx - xd * xy) / determinant;
    dx -= stepX;
    dy -= stepY;
    if (Math.abs(dx - startX) > 2 || Math.abs(dy - startY) > 2) return [];
    if (Math.hypot(stepX, stepY) < 0.002) break;
  }
  return [[dx, dy]];
}
