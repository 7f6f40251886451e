/**
 * Do two aligned captures have the same tones or opposite ones?
 *
 * Asked block by block of band-passed log-luminance. Tarnish, dirt and uneven light darken a
 * positive and a negative alike, so on a tarnished plate most blocks of a true pair correlate
 * positively; but only opposite readings make blocks with clear edges correlate strongly
 * *negatively*. The verdict counts those.
 *
 * Meaningless for captures that do not lie on each other, so asked after the gate only.
 */
import { gaussianBlur } from './gaussian-blur.ts';
import type { MaskedPlane } from './masked-plane.ts';

export type Polarity = 'same' | 'opposite' | 'unclear';

export interface PolarityMeasure {
  readonly polarity: Polarity;
  /** Share of the blocks whose tones are clearly opposite, 0 to 1; NaN without any block. */
  readonly oppositeShare: number;
  /** Share of the blocks whose tones are clearly the same, 0 to 1; NaN without any block. */
  readonly sameShare: number;
  readonly blocks: number;
}

/** Side of a block, pixels of the working copy, and the usable share that it needs. */
const block = 64;
const leastUsable = 0.4;
/** Band-pass: smoothed by the first less smoothed by the second, pixels. */
const fine = 1.2;
const coarse = 3;
/** Correlation from which the tones of a block are clear. */
const clear = 0.5;
/**
 * Share of clearly opposite blocks from which a pair is opposite, and up to which it is the
 * same, provided that enough blocks say so. Chosen on rendered pairs (no published source).
 */
export const oppositeFrom = 0.12;
const sameUpTo = 0.03;
const sameFrom = 0.3;
const leastBlocks = 12;

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
  const blocks = correlations.length;
  const share = (test: (r: number) => boolean) => correlations.filter(test).length / blocks;
  const oppositeShare = share((r) => r <= -clear);
  const sameShare = share((r) => r >= clear);
  return { polarity: verdict(oppositeShare, sameShare, blocks), oppositeShare, sameShare, blocks };
}

function verdict(oppositeShare: number, sameShare: number, blocks: number): Polarity {
  if (blocks < leastBlocks) return 'unclear';
  if (oppositeShare >= oppositeFrom) return 'opposite';
  return oppositeShare <= sameUpTo && sameShare >= sameFrom ? 'same' : 'unclear';
}

function bandPass(plane: MaskedPlane): Float32Array {
  const { width, height, data } = plane;
  const smooth = gaussianBlur(data, width, height, fine);
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
