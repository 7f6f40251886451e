/**
 * The ghost that a sheet of glass leaves beside the picture: its distance and strength, from
 * the picture alone.
 *
 * A second picture of strength s, d pixels aside, multiplies the power spectrum by
 * 1 + 2 s cos(2 pi f d). The logarithm turns that into a sum, so a transform of the logarithm
 * (the power cepstrum: an autocorrelation in which every frequency counts alike) has a peak of
 * height s at d, while what the picture itself contributes is smooth in f and stays near 0.
 * Frequencies count as much as they hold picture and not noise, since the sensor's noise has no
 * ghost. The peak is judged against the same distances off the axis, where no ghost can be.
 *
 * References
 * - Bogert, B. P., Healy, M. J. R. and Tukey, J. W. (1963). The quefrency alanysis of time series
 *   for echoes. Proc. Symposium on Time Series Analysis, 209-243 (from memory).
 */
import { forward2d, inverse2d, planFft, type FftPlan } from '../fft.ts';
import type { Estimate, Plane } from '../plane.ts';

export interface GhostEcho {
  /** Pixels along the rows; on which side is not known. */
  readonly pixels: number;
  /** Relative to the picture. */
  readonly strength: number;
  /** Height of the peak in standard deviations of what lies around it. */
  readonly significance: number;
}

export interface GhostOptions {
  /** Least distance looked at, pixels: nearer, the lens's own blur is in the way. */
  readonly from?: number;
  /** Largest distance looked at, pixels. */
  readonly to?: number;
  /** Side of the blocks of a lossy file, whose edges repeat; 0 where there are none. */
  readonly blocks?: number;
}

/** Side of the tiles whose spectra are averaged, pixels. */
const side = 512;
/** A peak must stand out by this much: measured, the largest of pictures without a ghost is 5.3. */
const leastSignificance = 6.5;
/** Rows off the axis that say how high a peak is by chance. */
const offAxis = [3, 40] as const;

/** Find the ghost along the rows of a picture in linear light. */
export function findGhost(plane: Plane, options: GhostOptions = {}): Estimate<GhostEcho> {
  const { from = 6, to = 120, blocks = 0 } = options;
  if (plane.width < side || plane.height < side) {
    return { ok: false, reason: `the picture is smaller than ${side} pixels` };
  }
  const plan = planFft(side);
  const spectrum = meanLogPower(plane, plan);
  const cepstrum = weightedCepstrum(spectrum, plan);
  if (cepstrum === null) return { ok: false, reason: 'the picture has too little detail' };
  const onBlock = (d: number) => blocks > 0 && Math.abs(d - blocks * Math.round(d / blocks)) < 1.2;
  let best = -1;
  for (let d = from; d <= to; d += 1) {
    if (!onBlock(d) && (best < 0 || cepstrum[d] > cepstrum[best])) best = d;
  }
  const significance = cepstrum[best] / spreadAround(cepstrum, best);
  if (significance < leastSignificance || best === from || best === to) {
    return { ok: false, reason: 'no ghost stands out from the picture' };
  }
  const [left, here, right] = [cepstrum[best - 1], cepstrum[best], cepstrum[best + 1]];
  const shift = (0.5 * (left - right)) / (left - 2 * here + right);
  return { ok: true, value: { pixels: best + shift, strength: here, significance } };
}

/** Mean logarithm of the tiles' power, size x size, transposed as the transform leaves it. */
function meanLogPower({ width, height, data }: Plane, plan: FftPlan): Float64Array {
  const sums = new Float64Array(side * side);
  const re = new Float64Array(side * side);
  const im = new Float64Array(side * side);
  const window = Float64Array.from(
    { length: side },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / side),
  );
  const places = tilePlaces(width, height);
  // Two tiles at a time, as the real and the imaginary part of one.
  for (let k = 0; k + 1 < places.length; k += 2) {
    fillTile(re, data, width, places[k], window);
    fillTile(im, data, width, places[k + 1], window);
    forward2d(plan, re, im);
    for (let v = 0; v < side; v += 1) {
      const minusV = (side - v) % side;
      for (let u = 0; u < side; u += 1) {
        const a = v * side + u;
        const b = minusV * side + ((side - u) % side);
        const first = (re[a] + re[b]) ** 2 + (im[a] - im[b]) ** 2;
        const second = (im[a] + im[b]) ** 2 + (re[b] - re[a]) ** 2;
        sums[a] += Math.log(first + 1e-9) + Math.log(second + 1e-9);
      }
    }
  }
  const count = places.length - (places.length % 2);
  for (let i = 0; i < sums.length; i += 1) sums[i] /= count;
  return sums;
}

/** Tiles that overlap by half, an even number of them, at most 48. */
function tilePlaces(width: number, height: number): (readonly [number, number])[] {
  const along = (length: number) => {
    const steps = Math.max(1, Math.floor((length - side) / (side / 2)));
    return Array.from({ length: steps + 1 }, (_, i) => Math.round(((length - side) * i) / steps));
  };
  const all = along(height).flatMap((y) => along(width).map((x) => [x, y] as const));
  const every = Math.ceil(all.length / 48);
  const some = all.filter((_, i) => i % every === 0);
  return some.length === 1 ? [some[0], some[0]] : some;
}

function fillTile(
  out: Float64Array,
  data: Float32Array,
  width: number,
  [left, top]: readonly [number, number],
  window: Float64Array,
): void {
  let mean = 0;
  for (let y = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1) mean += data[(top + y) * width + left + x];
  }
  mean /= side * side;
  for (let y = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1) {
      const value = data[(top + y) * width + left + x] - mean;
      out[y * side + x] = value * window[x] * window[y];
    }
  }
}

/**
 * Transform of the logarithm without its smooth part, each frequency weighted by its share of
 * picture: row (down) times size plus column (across). Null where there is next to none.
 */
function weightedCepstrum(spectrum: Float64Array, plan: FftPlan): Float64Array | null {
  const smooth = boxMean(spectrum, 10);
  const noise = Math.log(noisePower(smooth));
  const re = new Float64Array(side * side);
  let weights = 0;
  for (let i = 0; i < re.length; i += 1) {
    const signal = Math.max(0, 1 - Math.exp(noise - smooth[i]) * 1.5);
    re[i] = signal * (spectrum[i] - smooth[i]);
    weights += signal * signal;
  }
  // The lowest frequencies hold the picture's large forms and the window, not a ghost.
  if (weights < 0.02 * side * side) return null;
  // From frequency to distance; the spectrum lies transposed, as `inverse2d` wants it.
  const im = new Float64Array(side * side);
  inverse2d(plan, re, im);
  return re.map((value) => value / weights);
}

/** Power of the sensor's noise: of the quietest tenth of the frequencies. */
function noisePower(smooth: Float64Array): number {
  const sorted = Float64Array.from(smooth).sort();
  return Math.exp(sorted[Math.floor(0.1 * sorted.length)]);
}

/** Mean over a square of 2 reach + 1, round the edges, since a spectrum is periodic. */
function boxMean(values: Float64Array, reach: number): Float64Array {
  const across = new Float64Array(values.length);
  const out = new Float64Array(values.length);
  const run = (from: Float64Array, to: Float64Array, stride: number, next: number) => {
    for (let line = 0; line < side; line += 1) {
      const at = (k: number) => line * next + ((k + side) % side) * stride;
      let sum = 0;
      for (let k = -reach; k <= reach; k += 1) sum += from[at(k)];
      for (let k = 0; k < side; k += 1) {
        to[at(k)] = sum / (2 * reach + 1);
        sum += from[at(k + reach + 1)] - from[at(k - reach)];
      }
    }
  };
  run(values, across, 1, side);
  run(across, out, side, 1);
  return out;
}

/** Root mean square of the cepstrum near a distance, above and below the axis. */
function spreadAround(cepstrum: Float64Array, distance: number): number {
  let sum = 0;
  let count = 0;
  for (let dy = offAxis[0]; dy <= offAxis[1]; dy += 1) {
    for (let d = Math.max(2, distance - 12); d <= distance + 12; d += 1) {
      sum += cepstrum[dy * side + d] ** 2 + cepstrum[(side - dy) * side + d] ** 2;
      count += 2;
    }
  }
  return Math.sqrt(sum / count);
}
