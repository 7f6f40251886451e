/**
 * Phase-only correlation of gradient fields: where does one window lie on the other?
 *
 * Only the phase of the cross-spectrum is kept, so that a few strong edges do not drown the many
 * weak ones; the phases of fields at two smoothings are added, and high frequencies, which are
 * noise, are weighed down.
 *
 * References
 * - Kuglin, C. D. and Hines, D. C. (1975). The phase correlation image alignment method. Proc.
 *   IEEE Int. Conf. on Cybernetics and Society, 163-165.
 * - Takita, K. et al. (2003). High-accuracy subpixel image registration based on phase-only
 *   correlation. IEICE Trans. Fundamentals E86-A(8), 1925-1934.
 */
import { forward2d, inverse2d, planFft } from '../fft.ts';
import type { GradientField } from './gradient-field.ts';

/** Spectrum of one window of a field, stored transposed. */
export interface Spectrum {
  readonly re: Float32Array;
  readonly im: Float32Array;
  /** Share of the window's samples that are usable, 0 to 1. */
  readonly usable: number;
}

export interface Correlator {
  /** Side of the transform, pixels. */
  readonly size: number;
  /** Spectrum of a window with its top-left sample at (x, y), not larger than the transform. */
  readonly spectrum: (
    field: GradientField,
    x: number,
    y: number,
    width: number,
    height: number,
  ) => Spectrum;
  /**
   * Correlation of two windows, one spectrum each per smoothing. Sample (dy, dx), wrapped round
   * at `size`, says how well the second window moved back by (dx, dy) fits the first. The
   * result is overwritten by the next call.
   */
  readonly correlate: (first: readonly Spectrum[], second: readonly Spectrum[]) => Float64Array;
}

/** Share of each side of a window over which it fades in, so that its edge is no feature. */
const taper = 0.2;

/** Keeps the phase of an empty frequency from being the phase of rounding errors. */
const tiny = 1e-9;

/**
 * @param size Power of two.
 * @param lowPass Standard deviation of the Gaussian weight on frequency, cycles per pixel.
 */
export function createCorrelator(size: number, lowPass: number): Correlator {
  const plan = planFft(size);
  const weight = frequencyWeight(size, lowPass);
  const sumRe = new Float64Array(size * size);
  const sumIm = new Float64Array(size * size);
  const re = new Float64Array(size * size);
  const im = new Float64Array(size * size);
  return {
    size,
    spectrum(field, x0, y0, width, height) {
      re.fill(0);
      im.fill(0);
      const across = fade(width);
      const down = fade(height);
      const { re: fromRe, im: fromIm, usable: mask } = field;
      const [left, right] = [Math.max(0, -x0), Math.min(width, field.width - x0)];
      let usable = 0;
      for (let y = Math.max(0, -y0); y < height && y0 + y < field.height; y += 1) {
        const to = y * size;
        const from = (y0 + y) * field.width + x0;
        for (let x = left; x < right; x += 1) {
          const k = across[x] * down[y];
          re[to + x] = fromRe[from + x] * k;
          im[to + x] = fromIm[from + x] * k;
          usable += mask[from + x];
        }
      }
      forward2d(plan, re, im);
      const share = usable / (width * height);
      return { re: new Float32Array(re), im: new Float32Array(im), usable: share };
    },
    correlate(first, second) {
      sumRe.fill(0);
      sumIm.fill(0);
      for (const [k, a] of first.entries()) addPhase(a, second[k], weight, sumRe, sumIm);
      inverse2d(plan, sumRe, sumIm);
      return sumRe;
    },
  };
}

function addPhase(
  a: Spectrum,
  b: Spectrum,
  weight: Float64Array,
  sumRe: Float64Array,
  sumIm: Float64Array,
): void {
  const { re: ar, im: ai } = a;
  const { re: br, im: bi } = b;
  for (let i = 0; i < sumRe.length; i += 1) {
    const re = br[i] * ar[i] + bi[i] * ai[i];
    const im = bi[i] * ar[i] - br[i] * ai[i];
    const g = weight[i] / (Math.sqrt(re * re + im * im) + tiny);
    sumRe[i] += re * g;
    sumIm[i] += im * g;
  }
}

/** Gaussian low-pass without the lowest frequencies, which hold the windows, not the plate. */
function frequencyWeight(size: number, lowPass: number): Float64Array {
  const weight = new Float64Array(size * size);
  for (let v = 0; v < size; v += 1) {
    for (let u = 0; u < size; u += 1) {
      const fx = (v < size / 2 ? v : v - size) / size;
      const fy = (u < size / 2 ? u : u - size) / size;
      const f2 = fx * fx + fy * fy;
      weight[v * size + u] = f2 < (1.5 / size) ** 2 ? 0 : Math.exp(-f2 / (2 * lowPass * lowPass));
    }
  }
  return weight;
}

function fade(length: number): Float64Array {
  return Float64Array.from({ length }, (_, i) => {
    const t = Math.min(i + 0.5, length - i - 0.5) / (length * taper);
    return t >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * t);
  });
}

export interface Peak {
  /** Displacement of the second window against the first, pixels. */
  readonly dx: number;
  readonly dy: number;
  /** Height above the mean of the correlation, in its standard deviations. */
  readonly z: number;
}

/** Highest sample within `reach` pixels of no displacement, z against that neighbourhood. */
export function highestPeak(correlation: Float64Array, size: number, reach: number): Peak {
  let best = -Infinity;
  let at = { dx: 0, dy: 0 };
  let sum = 0;
  let squares = 0;
  let count = 0;
  for (let dy = -reach; dy <= reach; dy += 1) {
    const row = ((dy + size) % size) * size;
    for (let dx = -reach; dx <= reach; dx += 1) {
      const v = correlation[row + ((dx + size) % size)];
      sum += v;
      squares += v * v;
      count += 1;
      if (v > best) {
        best = v;
        at = { dx, dy };
      }
    }
  }
  const mean = sum / count;
  const deviation = Math.sqrt(Math.max(0, squares / count - mean * mean) + 1e-30);
  return { ...at, z: (best - mean) / deviation };
}

/** A sample lower than this many standard deviations is not called a peak. */
const leastPeak = 2.5;

/**
 * The local maxima within `reach` pixels of no displacement, highest first, their places
 * interpolated by parabolas, z against the whole correlation.
 */
export function localPeaks(
  correlation: Float64Array,
  size: number,
  reach: number,
  most: number,
): readonly Peak[] {
  const { mean, deviation } = moments(correlation);
  const at = (x: number, y: number) =>
    correlation[((y + size) % size) * size + ((x + size) % size)];
  const peaks: Peak[] = [];
  for (let y = -reach; y <= reach; y += 1) {
    for (let x = -reach; x <= reach; x += 1) {
      const v = at(x, y);
      const z = (v - mean) / deviation;
      if (z < leastPeak || (peaks.length >= most && z <= peaks[peaks.length - 1].z)) continue;
      const [left, right, above, below] = [at(x - 1, y), at(x + 1, y), at(x, y - 1), at(x, y + 1)];
      if (v < left || v < right || v < above || v < below) continue;
      peaks.push({ dx: x + vertex(left, v, right), dy: y + vertex(above, v, below), z });
      peaks.sort((a, b) => b.z - a.z);
      if (peaks.length > most) peaks.pop();
    }
  }
  return peaks;
}

function moments(values: Float64Array): { mean: number; deviation: number } {
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i += 1) {
    sum += values[i];
    squares += values[i] * values[i];
  }
  const mean = sum / values.length;
  const variance = Math.max(0, squares / values.length - mean * mean);
  return { mean, deviation: Math.sqrt(variance + 1e-30) };
}

/** Place of the top of the parabola through three equally spaced samples, from the middle one. */
function vertex(before: number, middle: number, after: number): number {
  const curvature = before - 2 * middle + after - 1e-12;
  return Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / curvature));
}
