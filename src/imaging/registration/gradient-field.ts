/**
 * The double-angle gradient field: what a positive and a negative of one plate have in common.
 *
 * Any tone curve that only rises or only falls leaves the *line* of a gradient where it was and
 * at most turns its arrow round. Squaring the gradient as a complex number, (gx + i gy)^2,
 * doubles its angle, and the two arrows of one line become the same number. Divided by its
 * strength plus a few times the median strength, the field weighs an edge by how clearly it has
 * a direction, not by how much contrast this lighting happened to give it.
 *
 * The gradient is taken of a band-pass: tarnish, uneven light and the polish of the mirror change
 * tones slowly and differently in the two captures, and without the band-pass their slopes
 * decide the direction wherever the picture itself is flat.
 *
 * References
 * - Knutsson, H. (1982). Filtering and reconstruction in image processing. Linköping Studies in
 *   Science and Technology 88 (the double-angle representation).
 * - Bigün, J. and Granlund, G. H. (1987). Optimal orientation detection of linear symmetry.
 *   Proc. First ICCV, 433-438.
 */
import { gaussianBlur, wideBlur } from './gaussian-blur.ts';
import type { MaskedPlane } from './masked-plane.ts';
import { smallestBut } from './smallest-but.ts';

/** One complex number per pixel; its length is 0 (no direction) to 1. */
export interface GradientField {
  readonly width: number;
  readonly height: number;
  readonly re: Float32Array;
  readonly im: Float32Array;
  /** 1 where every sample that the gradient was made from is usable. */
  readonly usable: Uint8Array;
}

/** Smoothing of the ground that the band-pass takes away, as a multiple of sigma. */
const groundFactor = 2;
/** Strength, in medians, at which a gradient has half its length: flat ground has little. */
const floorFactor = 4;

/** From this smoothing on, pixels, a ground is smoothed at half size. */
const wideSigma = 3;

/** About so many samples are looked at for the median strength. */
const medianSamples = 8000;

/**
 * @param sigma Gaussian smoothing of log-luminance before the gradient, pixels; detail several
 *   times larger is taken away.
 * @param fieldSigma Gaussian smoothing of the field, pixels; 0 leaves it as it is.
 */
export function gradientField(
  plane: MaskedPlane,
  sigma: number,
  fieldSigma: number,
): GradientField {
  return octaveFields(plane, sigma, 1, fieldSigma)[0];
}

/**
 * Fields of several bands at once, each twice as coarse as the one before, which share their
 * smoothing: the ground of one band is the smoothed picture of the next.
 */
export function octaveFields(
  plane: MaskedPlane,
  finest: number,
  bands: number,
  fieldSigma: number,
): readonly GradientField[] {
  const { width, height } = plane;
  const usable = usableGradients(plane);
  const fields: GradientField[] = [];
  let smooth = gaussianBlur(plane.data, width, height, finest);
  for (let k = 0; k < bands; k += 1) {
    // Two Gaussians in a row are one whose variance is the sum.
    const more = finest * groundFactor ** k * Math.sqrt(groundFactor ** 2 - 1);
    const blur = more < wideSigma ? gaussianBlur : wideBlur;
    const ground = blur(smooth, width, height, more);
    for (let i = 0; i < smooth.length; i += 1) smooth[i] -= ground[i];
    fields.push(fieldOfBand(smooth, usable, width, height, fieldSigma));
    smooth = ground;
  }
  return fields;
}

function fieldOfBand(
  band: Float32Array,
  usable: Uint8Array,
  width: number,
  height: number,
  fieldSigma: number,
): GradientField {
  const re = new Float32Array(width * height);
  const im = new Float32Array(width * height);
  const strength = new Float32Array(width * height);
  for (let y = 2; y < height - 2; y += 1) {
    for (let x = 2, i = y * width + 2; x < width - 2; x += 1, i += 1) {
      const gx = band[i + 1] - band[i - 1];
      const gy = band[i + width] - band[i - width];
      re[i] = gx * gx - gy * gy;
      im[i] = 2 * gx * gy;
      strength[i] = gx * gx + gy * gy;
    }
  }
  const floor = floorFactor * medianOf(strength, usable) + 1e-9;
  for (let i = 0; i < re.length; i += 1) {
    const scale = usable[i] ? 1 / (strength[i] + floor) : 0;
    re[i] *= scale;
    im[i] *= scale;
  }
  if (fieldSigma <= 0) return { width, height, re, im, usable };
  return {
    width,
    height,
    re: gaussianBlur(re, width, height, fieldSigma),
    im: gaussianBlur(im, width, height, fieldSigma),
    usable,
  };
}

function usableGradients({ width, height, usable }: MaskedPlane): Uint8Array {
  const result = new Uint8Array(width * height);
  const w = width;
  for (let y = 2; y < height - 2; y += 1) {
    for (let x = 2, i = y * w + 2; x < w - 2; x += 1, i += 1) {
      result[i] =
        usable[i] &
        usable[i - 2] &
        usable[i + 2] &
        usable[i - 2 * w] &
        usable[i + 2 * w] &
        usable[i - w - 1] &
        usable[i - w + 1] &
        usable[i + w - 1] &
        usable[i + w + 1];
    }
  }
  return result;
}

function medianOf(values: Float32Array, usable: Uint8Array): number {
  const step = Math.max(1, Math.floor(values.length / medianSamples));
  const sample = new Float32Array(Math.ceil(values.length / step));
  let count = 0;
  for (let i = 0; i < values.length; i += step) {
    if (!usable[i]) continue;
    sample[count] = values[i];
    count += 1;
  }
  if (count === 0) return 0;
  return smallestBut(sample.subarray(0, count), Math.floor((count - 1) / 2));
}
