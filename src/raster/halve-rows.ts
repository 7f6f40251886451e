/**
 * One step of a pyramid: rows of linear light in, rows of half the size out, each sample the
 * exact mean of the source pixels that it covers.
 *
 * The mean has to be taken in linear light. A plate's highlights and scratches are single bright
 * pixels; the mean of encoded values shows them too dark, more with each level (on lines one
 * pixel wide the loss was measured at 31 % per first halving).
 *
 * Sizes are rounded up, so the last column and row of a level may stand for fewer source pixels
 * than the others. They are weighted by that number: equal weights would let an edge count double.
 */
import type { LevelShape, PictureSize } from './pyramid-geometry.ts';

/** Takes one row of codes, which starts at `at`. */
export type TakeCodes = (codes: Uint8Array | Uint16Array, at: number) => void;
/** Takes one row of linear light, 0 to 65535. */
export type TakeLight = (row: Float32Array) => void;

/**
 * The step from the source's codes.
 *
 * @param linear Code to linear light.
 * @param next Takes each row of the next level; the array is used again for the following row.
 */
export function halveCodes(
  source: PictureSize,
  level: LevelShape,
  channels: 1 | 3,
  linear: Float32Array,
  next: TakeLight,
): TakeCodes {
  const paired = Math.floor(level.width / 2) * channels;
  const edge = edgeColumn(source, level, channels);
  const join = joinRows(source, level, channels, next);
  return (codes, at) => {
    join((sums) => {
      // Written out for three channels: this loop and the next are where the time goes.
      if (channels === 3) {
        for (let d = 0, i = at; d < paired; d += 3, i += 6) {
          sums[d] = (linear[codes[i]] + linear[codes[i + 3]]) / 2;
          sums[d + 1] = (linear[codes[i + 1]] + linear[codes[i + 4]]) / 2;
          sums[d + 2] = (linear[codes[i + 2]] + linear[codes[i + 5]]) / 2;
        }
      } else {
        for (let d = 0, i = at; d < paired; d += 1, i += 2) {
          sums[d] = (linear[codes[i]] + linear[codes[i + 1]]) / 2;
        }
      }
      edge(sums, (i) => linear[codes[at + i]]);
    });
  };
}

/** The same step between two levels, from rows that are linear already. */
export function halveLight(
  source: PictureSize,
  level: LevelShape,
  channels: 1 | 3,
  next: TakeLight,
): TakeLight {
  const paired = Math.floor(level.width / 2) * channels;
  const edge = edgeColumn(source, level, channels);
  const join = joinRows(source, level, channels, next);
  return (row) => {
    join((sums) => {
      if (channels === 3) {
        for (let d = 0, i = 0; d < paired; d += 3, i += 6) {
          sums[d] = (row[i] + row[i + 3]) / 2;
          sums[d + 1] = (row[i + 1] + row[i + 4]) / 2;
          sums[d + 2] = (row[i + 2] + row[i + 5]) / 2;
        }
      } else {
        for (let d = 0, i = 0; d < paired; d += 1, i += 2) sums[d] = (row[i] + row[i + 1]) / 2;
      }
      edge(sums, (i) => row[i]);
    });
  };
}

/** Means across the last column, which may have no partner or cover fewer source pixels. */
function edgeColumn(
  source: PictureSize,
  { width, factor }: LevelShape,
  channels: 1 | 3,
): (sums: Float32Array, read: (sample: number) => number) => void {
  const length = Math.ceil(width / 2) * channels;
  const last = (width - 1) * channels;
  const weight = source.width - (width - 1) * factor;
  return (sums, read) => {
    for (let c = 0; c < channels; c += 1) {
      const to = length - channels + c;
      if (width % 2 === 1) sums[to] = read(last + c);
      else if (weight < factor) {
        const inner = read(last - channels + c);
        sums[to] = (inner * factor + read(last + c) * weight) / (factor + weight);
      }
    }
  };
}

/** Means of two rows of column means; the last row may have no partner or cover fewer rows. */
function joinRows(
  source: PictureSize,
  { width, height, factor }: LevelShape,
  channels: 1 | 3,
  next: TakeLight,
): (fill: (means: Float32Array) => void) => void {
  const length = Math.ceil(width / 2) * channels;
  const upper = new Float32Array(length);
  const lower = new Float32Array(length);
  const lastWeight = source.height - (height - 1) * factor;
  let y = 0;
  return (fill) => {
    const isLower = y % 2 === 1;
    const isLast = y === height - 1;
    y += 1;
    fill(isLower ? lower : upper);
    if (isLower) {
      const weight = isLast ? lastWeight : factor;
      const share = weight / (factor + weight);
      for (let i = 0; i < length; i += 1) upper[i] += (lower[i] - upper[i]) * share;
    }
    if (isLower || isLast) next(upper);
  };
}
