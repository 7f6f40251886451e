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
  const cells = cellsOf(from.width, to.width);
  const sums = new Float64Array(to.width);
  let y = 0;
  let sourceY = 0;
  for await (const row of rows) {
    shrinkRow(row, cells, shrunk);
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

/** Of each output pixel: the first and last source pixel, and the parts of them that lie in it. */
interface Cells {
  readonly step: number;
  readonly first: Int32Array;
  readonly last: Int32Array;
  readonly firstPart: Float64Array;
  readonly lastPart: Float64Array;
}

function cellsOf(width: number, count: number): Cells {
  const step = width / count;
  const cells: Cells = {
    step,
    first: new Int32Array(count),
    last: new Int32Array(count),
    firstPart: new Float64Array(count),
    lastPart: new Float64Array(count),
  };
  for (let x = 0; x < count; x += 1) {
    const left = x * step;
    const right = Math.min(width, left + step);
    const first = Math.floor(left);
    const last = Math.ceil(right) - 1;
    cells.first[x] = first;
    cells.last[x] = last;
    cells.firstPart[x] = Math.min(right, first + 1) - left;
    cells.lastPart[x] = last > first ? right - last : 0;
  }
  return cells;
}

function shrinkRow(
  row: Float32Array,
  { step, first, last, firstPart, lastPart }: Cells,
  out: Float64Array,
): void {
  for (let x = 0; x < out.length; x += 1) {
    const end = last[x];
    let sum = row[first[x]] * firstPart[x];
    for (let i = first[x] + 1; i < end; i += 1) sum += row[i];
    out[x] = (sum + row[end] * lastPart[x]) / step;
  }
}
