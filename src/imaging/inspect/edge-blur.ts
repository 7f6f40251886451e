/**
 * How soft a picture is where nobody put a target: the blur of its sharpest edges, in pixels.
 *
 * A step edge blurred by sigma has a steepest slope proportional to 1 / sigma. Blurring it
 * again by a known amount lowers that slope by a ratio that depends on sigma alone: not on
 * the edge's contrast, nor on its sign, so that a positive and a negative can be compared.
 * A plate has soft things on it as well as sharp ones, so the sharpest quarter speaks.
 *
 * The figure is not an MTF, and it depends on what edges a capture shows: raking light shows
 * scratches, which are sharp, where axial light shows none. Captures are compared at the edges
 * that they share: shared-edges.ts.
 *
 * References
 * - Zhuo, S. and Sim, T. (2011). Defocus map estimation from a single image. Pattern
 *   Recognition 44(9), 1852-1858. doi:10.1016/j.patcog.2011.03.009
 */
import type { Estimate } from '../plane.ts';
import { smooth } from './gaussian.ts';
import { median, quantile } from './quantile.ts';
import type { Samples } from './samples.ts';

export interface EdgeBlur {
  /** Standard deviation of the blur of the sharpest edges, pixels. */
  readonly sigma: number;
  /** Edge points that were measured. */
  readonly edges: number;
}

/** Smoothing before anything else, so that single noisy pixels are not edges, pixels. */
const firstSmoothing = 0.8;
/** Total smoothing of the second look, pixels. */
const secondSmoothing = 1.8;
/** A slope must stand this far above that of noise to be an edge; common practice, no source. */
const slopeOverNoise = 6;
const fewestEdges = 60;

/**
 * Measure one or several parts of a picture at full resolution.
 * @param parts Linear light, 0 to `white`.
 */
export function measureEdgeBlur(parts: readonly Samples[], white = 65535): Estimate<EdgeBlur> {
  const sigmas: number[] = [];
  for (const part of parts) {
    const { points, strongest } = edgePoints(part, white, slopeOverNoise);
    for (const { slope, sigma } of points) if (slope >= strongest) sigmas.push(sigma);
  }
  if (sigmas.length < fewestEdges) {
    return { ok: false, reason: `only ${sigmas.length} edges stand clear of the noise` };
  }
  return { ok: true, value: { sigma: quantile(sigmas, 0.25), edges: sigmas.length } };
}

/** A place where the tone is steepest along its row or column. */
export interface EdgePoint {
  readonly x: number;
  readonly y: number;
  /** Direction of the slope, radians. */
  readonly direction: number;
  /** Slope of the logarithm, per pixel, after the first smoothing. */
  readonly slope: number;
  /** Standard deviation of the blur there, pixels. */
  readonly sigma: number;
}

/** All edge points of a part whose slope stands `overNoise` times above the part's median slope. */
export function edgePoints(
  part: Samples,
  white: number,
  overNoise: number,
): { readonly points: EdgePoint[]; readonly strongest: number } {
  const { width, height } = part;
  const tones = logarithms(part, white);
  const smoothed = smooth(tones, firstSmoothing);
  const fine = gradientSizes(smoothed);
  const coarse = gradientSizes(smooth(tones, secondSmoothing));
  // Most of a picture is not edge: the median slope is that of noise and fine grain.
  const threshold = overNoise * median(fine.data);
  const points: EdgePoint[] = [];
  for (let y = 3; y < height - 3; y += 1) {
    for (let x = 3; x < width - 3; x += 1) {
      const at = y * width + x;
      const slope = fine.data[at];
      if (slope < threshold || !isRidge(fine, x, y)) continue;
      if (isClippedNear(part, x, y, white)) continue;
      const ratio = (slope / coarse.data[at]) ** 2;
      if (!(ratio > 1)) continue;
      // slope^2 is proportional to 1 / (sigma^2 + smoothing^2), for both smoothings.
      const blurSquared = (secondSmoothing ** 2 - firstSmoothing ** 2 * ratio) / (ratio - 1);
      const { data } = smoothed;
      const direction = Math.atan2(
        data[at + width] - data[at - width],
        data[at + 1] - data[at - 1],
      );
      points.push({ x, y, direction, slope, sigma: Math.sqrt(Math.max(0, blurSquared)) });
    }
  }
  return { points, strongest: quantile(fine.data, 0.98) };
}

function logarithms({ width, height, data }: Samples, white: number): Samples {
  // Two per cent of white keeps the noise of the shadows from being stretched into edges.
  const logs = new Float32Array(width * height);
  for (let i = 0; i < logs.length; i += 1) logs[i] = Math.log(0.02 + data[i] / white);
  return { width, height, data: logs };
}

function gradientSizes({ width, height, data }: Samples): Samples & { data: Float32Array } {
  const sizes = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x;
      const across = data[at + 1] - data[at - 1];
      const down = data[at + width] - data[at - width];
      sizes[at] = 0.5 * Math.sqrt(across * across + down * down);
    }
  }
  return { width, height, data: sizes };
}

/** The slope is greatest here along the row or along the column. */
function isRidge({ width, data }: Samples, x: number, y: number): boolean {
  const at = y * width + x;
  const here = data[at];
  return (
    (here >= data[at - 1] && here > data[at + 1]) ||
    (here >= data[at - width] && here > data[at + width])
  );
}

/** A clipped highlight ends in an edge that the lens did not make. */
function isClippedNear(part: Samples, x: number, y: number, white: number): boolean {
  for (let j = -3; j <= 3; j += 1) {
    for (let i = -3; i <= 3; i += 1) {
      if (part.data[(y + j) * part.width + x + i] >= 0.985 * white) return true;
    }
  }
  return false;
}
