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
import type { RowLoops } from '../imaging/row-loops.ts';
import type { LevelShape, PictureSize } from './pyramid-geometry.ts';

/** Takes one row of linear light, 0 to 65535; the array is used again for the next. */
export type TakeLight = (row: Float32Array) => void;

export interface HalvedLevel {
  readonly source: PictureSize;
  readonly level: LevelShape;
  readonly channels: 1 | 3;
  readonly loops: RowLoops;
  /** Takes each row of the next level. */
  readonly next: TakeLight;
}

/** Rows and samples that {@link halveCodes} and {@link halveLight} take of the loops' memory. */
export function halvingRoom(levels: readonly LevelShape[], channels: 1 | 3) {
  const rows = levels.slice(0, -1);
  const samples = rows.reduce((sum, { width }) => sum + 2 * Math.ceil(width / 2) * channels, 0);
  return { samples, rows: 2 * rows.length };
}

/** The step from the source's codes, which the loops hold. @param linear Code to linear light. */
export function halveCodes(options: HalvedLevel, linear: Float32Array): () => void {
  const { loops } = options;
  const halve = halveRows(options, loops.codeMeans, loops.joinCodeMeans);
  return () => {
    halve((i) => linear[loops.codes[i]]);
  };
}

/** The same step between two levels, from rows that are linear already. */
export function halveLight(options: HalvedLevel): TakeLight {
  const { loops } = options;
  let row: Float32Array;
  const halve = halveRows(
    options,
    (means, pairs) => {
      loops.lightMeans(row, means, pairs);
    },
    (means, pairs) => {
      loops.joinLightMeans(row, means, pairs);
    },
  );
  return (taken) => {
    row = taken;
    halve((i) => taken[i]);
  };
}

type Means = (means: Float32Array, pairs: number) => void;

/** Takes one row after another; `read` gives its samples in linear light. */
function halveRows(
  { source, level, channels, loops, next }: HalvedLevel,
  meansOf: Means,
  joinMeansOf: Means,
): (read: (sample: number) => number) => void {
  const { width, height, factor } = level;
  const length = Math.ceil(width / 2) * channels;
  const pairs = Math.floor(width / 2);
  const upper = loops.floats(length);
  const lower = loops.floats(length);
  const edge = edgeColumn(source, level, channels);
  const lastWeight = source.height - (height - 1) * factor;
  let y = 0;
  return (read) => {
    const isLower = y % 2 === 1;
    const isLast = y === height - 1;
    y += 1;
    if (!isLower) {
      meansOf(upper, pairs);
      edge(upper, read);
    } else if (isLast && lastWeight < factor) {
      meansOf(lower, pairs);
      edge(lower, read);
      const share = lastWeight / (factor + lastWeight);
      for (let i = 0; i < length; i += 1) upper[i] += (lower[i] - upper[i]) * share;
    } else {
      lower.set(upper.subarray(length - channels), length - channels);
      joinMeansOf(upper, pairs);
      edge(upper, read, lower);
    }
    if (isLower || isLast) next(upper);
  };
}

/**
 * Means across the last column, which may have no partner or cover fewer source pixels.
 *
 * @param above Where the means of the row above are to be joined: an array that holds them.
 */
function edgeColumn(
  source: PictureSize,
  { width, factor }: LevelShape,
  channels: 1 | 3,
): (means: Float32Array, read: (sample: number) => number, above?: Float32Array) => void {
  const length = Math.ceil(width / 2) * channels;
  const last = (width - 1) * channels;
  const weight = source.width - (width - 1) * factor;
  const alone = width % 2 === 1;
  return (means, read, above) => {
    if (!alone && weight === factor) return;
    for (let c = 0; c < channels; c += 1) {
      const to = length - channels + c;
      const own = read(last + c);
      const mean = alone
        ? own
        : (read(last - channels + c) * factor + own * weight) / (factor + weight);
      means[to] = above ? (above[to] + Math.fround(mean)) / 2 : mean;
    }
  };
}
