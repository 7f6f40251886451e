/**
 * Area-mean shrinking of a whole capture in linear light, row by row, by any factor of at least 1.
 *
 * One output pixel covers `factor` x `factor` input pixels, so output (x, y) lies at input
 * `factor * x + (factor - 1) / 2`. A last, partial pixel is dropped.
 */
import type { Plane16 } from '../plane.ts';
import { clipLevel, shadowFloor, white, type MaskedPlane } from './masked-plane.ts';

/** Size of a picture after shrinking. */
export function shrunkSize(
  plane: { readonly width: number; readonly height: number },
  factor: number,
): { readonly width: number; readonly height: number } {
  // A hair is added so that 6000 / (6000 / 1500) is 1500 and not 1499.
  return {
    width: Math.floor(plane.width / factor + 1e-6),
    height: Math.floor(plane.height / factor + 1e-6),
  };
}

/** Shrink, then take the logarithm; unusable where any of the covered samples is clipped. */
export function shrinkToLog(plane: Plane16, factor: number): MaskedPlane {
  const { width, height, mean, clipped } = areaMean(plane, factor);
  const usable = clipped.map((c) => (c ? 0 : 1));
  for (let i = 0; i < mean.length; i += 1) mean[i] = Math.log(shadowFloor + mean[i] / white);
  return { width, height, data: mean, usable };
}

/** Shrink to the same kind of plane. A clipped sample anywhere below makes a pixel clipped. */
export function shrinkPlane(plane: Plane16, factor: number): Plane16 {
  if (factor === 1) return plane;
  const { width, height, mean, clipped } = areaMean(plane, factor);
  const data = new Uint16Array(mean.length);
  for (let i = 0; i < mean.length; i += 1) data[i] = clipped[i] ? white : Math.round(mean[i]);
  return { width, height, data };
}

interface AreaMean {
  readonly width: number;
  readonly height: number;
  /** Mean of the covered samples, 0 to 65535. */
  readonly mean: Float32Array;
  /** 1 where any covered sample is clipped. */
  readonly clipped: Uint8Array;
}

function areaMean(plane: Plane16, factor: number): AreaMean {
  const { width, height } = shrunkSize(plane, factor);
  const mean = new Float32Array(width * height);
  const clipped = new Uint8Array(width * height);
  const row = { sum: new Float64Array(width), clipped: new Uint8Array(width) };
  for (let y = 0; y < plane.height; y += 1) {
    const first = Math.floor(y / factor + 1e-9);
    if (first >= height) break;
    sumRow(plane, y, factor, row);
    // The share of this input row that belongs to output row `first`; the rest is the next one's.
    const share = Math.min(1, (first + 1) * factor - y);
    addRow(row, share, first * width, mean, clipped);
    if (share < 1 && first + 1 < height) {
      addRow(row, 1 - share, (first + 1) * width, mean, clipped);
    }
  }
  const scale = 1 / (factor * factor);
  for (let i = 0; i < mean.length; i += 1) mean[i] *= scale;
  return { width, height, mean, clipped };
}

interface RowSum {
  readonly sum: Float64Array;
  readonly clipped: Uint8Array;
}

function sumRow(plane: Plane16, y: number, factor: number, row: RowSum): void {
  const clip = clipLevel * white;
  const start = y * plane.width;
  for (let x = 0; x < row.sum.length; x += 1) {
    const left = x * factor;
    const right = left + factor;
    let sum = 0;
    let most = 0;
    for (let i = Math.floor(left + 1e-9); i < right - 1e-9 && i < plane.width; i += 1) {
      const value = plane.data[start + i];
      sum += value * (Math.min(i + 1, right) - Math.max(i, left));
      if (value > most) most = value;
    }
    row.sum[x] = sum;
    row.clipped[x] = most >= clip ? 1 : 0;
  }
}

function addRow(
  row: RowSum,
  share: number,
  offset: number,
  mean: Float32Array,
  clipped: Uint8Array,
): void {
  if (share < 1e-6) return;
  for (let x = 0; x < row.sum.length; x += 1) {
    mean[offset + x] += share * row.sum[x];
    clipped[offset + x] |= row.clipped[x];
  }
}
