/**
 * Exact area means of rows at any smaller size: a source pixel that lies on the border of two
 * output pixels counts for each by the part that lies in it.
 */
import type { PictureSize } from './pyramid-geometry.ts';

/**
 * @param rows One array per source row, linear.
 * @param take Gets each output row; the array is used again for the next.
 */
export async function shrinkRows(
  rows: AsyncIterable<Float32Array>,
  from: PictureSize,
  to: PictureSize,
  take: (row: Float64Array, y: number) => void,
): Promise<void> {
  const stepY = from.height / to.height;
  const shrunk = new Float64Array(to.width);
  const sums = new Float64Array(to.width);
  let y = 0;
  let sourceY = 0;
  for await (const row of rows) {
    shrinkRow(row, from.width, shrunk);
    const bottom = sourceY + 1;
    // The last row ends its output row whatever rounding says.
    const end = y === to.height - 1 ? from.height : (y + 1) * stepY;
    const here = Math.min(bottom, end) - sourceY;
    for (let x = 0; x < to.width; x += 1) sums[x] += shrunk[x] * here;
    if (bottom >= end - 1e-9) {
      for (let x = 0; x < to.width; x += 1) sums[x] /= stepY;
      take(sums, y);
      y += 1;
      const rest = Math.max(0, 1 - here);
      for (let x = 0; x < to.width; x += 1) sums[x] = shrunk[x] * rest;
    }
    sourceY = bottom;
  }
}

function shrinkRow(row: Float32Array, width: number, out: Float64Array): void {
  const step = width / out.length;
  for (let x = 0; x < out.length; x += 1) {
    const left = x * step;
    const right = Math.min(width, left + step);
    const first = Math.floor(left);
    let sum = 0;
    for (let i = first; i < right; i += 1) {
      sum += row[i] * (Math.min(right, i + 1) - Math.max(left, i));
    }
    out[x] = sum / step;
  }
}
