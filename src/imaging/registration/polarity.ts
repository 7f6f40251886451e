/**
 * Do two aligned captures have the same tones or opposite ones?
 *
 * Asked block by block of band-passed log-luminance, since a plate may be positive in one corner
 * and negative in another; the correlation over the whole picture alone is too weak a witness.
 * Meaningless for captures that do not lie on each other, so asked after the gate only.
 */
import { gaussianBlur } from './gaussian-blur.ts';
import type { MaskedPlane } from './masked-plane.ts';

export type Polarity = 'same' | 'opposite' | 'unclear';

export interface PolarityMeasure {
  readonly polarity: Polarity;
  /** Median over the blocks of the correlation of the two captures, -1 to 1. */
  readonly medianCorrelation: number;
  /** Share of the blocks with a negative correlation, 0 to 1. */
  readonly negativeShare: number;
  readonly blocks: number;
}

/** Longer side of the pictures looked at, at most, and side of a block, pixels. */
export const polaritySide = 800;
const block = 32;
/** Band-pass: less the picture smoothed by this share of the longer side, itself by `fine` pixels. */
const fine = 1.2;
const coarseShare = 1 / 40;
/** A verdict needs this median correlation and this share of blocks on its side. */
const leastMedian = 0.3;
const leastShare = 0.65;
const leastBlocks = 8;
const leastUsable = 0.4;

/** @param drawn The moving capture drawn in the frame of `base`. */
export function measurePolarity(base: MaskedPlane, drawn: MaskedPlane): PolarityMeasure {
  const still = bandPass(base);
  const other = bandPass(drawn);
  const correlations: number[] = [];
  for (let y = 0; y + block <= base.height; y += block) {
    for (let x = 0; x + block <= base.width; x += block) {
      const r = blockCorrelation(base, drawn, still, other, x, y);
      if (r !== null) correlations.push(r);
    }
  }
  correlations.sort((a, b) => a - b);
  const blocks = correlations.length;
  if (blocks === 0) {
    return { polarity: 'unclear', medianCorrelation: NaN, negativeShare: NaN, blocks };
  }
  const medianCorrelation = correlations[blocks >> 1];
  const negativeShare = correlations.filter((r) => r < 0).length / blocks;
  const polarity = verdict(medianCorrelation, negativeShare, blocks);
  return { polarity, medianCorrelation, negativeShare, blocks };
}

function verdict(median: number, negativeShare: number, blocks: number): Polarity {
  if (blocks < leastBlocks || Math.abs(median) < leastMedian) return 'unclear';
  if (median < 0) return negativeShare >= leastShare ? 'opposite' : 'unclear';
  return 1 - negativeShare >= leastShare ? 'same' : 'unclear';
}

function bandPass(plane: MaskedPlane): Float32Array {
  const { width, height, data } = plane;
  const smooth = gaussianBlur(data, width, height, fine);
  const coarse = Math.max(8, Math.max(width, height) * coarseShare);
  const ground = gaussianBlur(data, width, height, coarse);
  return smooth.map((v, i) => v - ground[i]);
}

function blockCorrelation(
  base: MaskedPlane,
  drawn: MaskedPlane,
  a: Float32Array,
  b: Float32Array,
  x0: number,
  y0: number,
): number | null {
  let n = 0;
  let sa = 0;
  let sb = 0;
  let saa = 0;
  let sbb = 0;
  let sab = 0;
  for (let y = y0; y < y0 + block; y += 1) {
    for (let x = x0, i = y * base.width + x0; x < x0 + block; x += 1, i += 1) {
      if (!(base.usable[i] & drawn.usable[i])) continue;
      n += 1;
      sa += a[i];
      sb += b[i];
      saa += a[i] * a[i];
      sbb += b[i] * b[i];
      sab += a[i] * b[i];
    }
  }
  if (n < block * block * leastUsable) return null;
  const variance = (saa - (sa * sa) / n) * (sbb - (sb * sb) / n);
  return variance > 0 ? (sab - (sa * sb) / n) / Math.sqrt(variance) : 0;
}
