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
import { type LevelShape, type PictureSize } from './pyramid-geometry.ts';

/** Takes a row of codes, from `at` on, that `linear` turns into light. */
export type TakeRow = (codes: Uint8Array | Uint16Array, at: number) => void;

/**
 * @param source Size of the full picture.
 * @param level The level whose rows are taken.
 * @param linear Code to linear light.
 * @param next Takes each row of the next level; the array is used again for the following row.
 */
export function halveRows(
  source: PictureSize,
  level: LevelShape,
  channels: 1 | 3,
  linear: Uint16Array,
  next: TakeRow,
): TakeRow {
  const { width, height, factor } = level;
  const length = Math.ceil(width / 2) * channels;
  const paired = Math.floor(width / 2) * channels;
  // Sums of two neighbours, one row of them for each of two rows.
  const upper = new Uint32Array(length);
  const lower = new Uint32Array(length);
  const out = new Uint16Array(length);
  const lastColumnWeight = source.width - (width - 1) * factor;
  const lastRowWeight = source.height - (height - 1) * factor;
  let y = 0;

  function addNeighbours(codes: Uint8Array | Uint16Array, at: number, sums: Uint32Array): void {
    if (channels === 3) {
      for (let d = 0, i = at; d < paired; d += 3, i += 6) {
        sums[d] = linear[codes[i]] + linear[codes[i + 3]];
        sums[d + 1] = linear[codes[i + 1]] + linear[codes[i + 4]];
        sums[d + 2] = linear[codes[i + 2]] + linear[codes[i + 5]];
      }
    } else {
      for (let d = 0, i = at; d < paired; d += 1, i += 2) {
        sums[d] = linear[codes[i]] + linear[codes[i + 1]];
      }
    }
    const last = at + (width - 1) * channels;
    for (let c = 0; c < channels; c += 1) {
      const edge = linear[codes[last + c]];
      if (width % 2 === 1) {
        sums[length - channels + c] = 2 * edge;
      } else if (lastColumnWeight < factor) {
        const inner = linear[codes[last - channels + c]];
        const mean = (inner * factor + edge * lastColumnWeight) / (factor + lastColumnWeight);
        sums[length - channels + c] = Math.round(2 * mean);
      }
    }
  }

  return (codes, at) => {
    const isLower = y % 2 === 1;
    const isLast = y === height - 1;
    const sums = isLower ? lower : upper;
    addNeighbours(codes, at, sums);
    y += 1;
    if (!isLower && !isLast) return;
    if (isLower && isLast && lastRowWeight < factor) {
      const total = 2 * (factor + lastRowWeight);
      for (let i = 0; i < length; i += 1) {
        out[i] = Math.round((upper[i] * factor + lower[i] * lastRowWeight) / total);
      }
    } else {
      const partner = isLower ? lower : upper;
      for (let i = 0; i < length; i += 1) out[i] = (upper[i] + partner[i] + 2) >> 2;
    }
    next(out, 0);
  };
}
