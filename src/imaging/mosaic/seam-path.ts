/**
 * The way through an overlap along which two pictures differ least.
 *
 * References
 * - Efros, A. A. and Freeman, W. T. (2001). Image quilting for texture synthesis and transfer.
 *   Proc. SIGGRAPH 2001, 341-346. doi:10.1145/383259.383296 (minimum error boundary cut by
 *   dynamic programming)
 */

/** Cells of one line of the overlap that the seam may pass through, both included. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/**
 * One cell for each line, each at most one cell beside the last.
 *
 * @param cost Of passing through cell `at` of line `line`; not negative.
 */
export function seamPath(
  intervals: readonly Interval[],
  cost: (line: number, at: number) => number,
): Int32Array {
  const sums: Float64Array[] = [];
  const came: Int32Array[] = [];
  intervals.forEach(({ from, to }, line) => {
    const sum = new Float64Array(to - from + 1);
    const back = new Int32Array(to - from + 1);
    const before = line > 0 ? sums[line - 1] : null;
    const start = line > 0 ? intervals[line - 1].from : 0;
    for (let at = from; at <= to; at += 1) {
      let best = before ? Infinity : 0;
      let place = at;
      for (let k = at - 1; before && k <= at + 1; k += 1) {
        const value = before[k - start] ?? Infinity;
        // Straight on where it makes no difference.
        if (value < best || (value === best && k === at)) [best, place] = [value, k];
      }
      if (before && best === Infinity) {
        // Where the overlap itself jumps, the seam jumps with it.
        place = start + before.indexOf(Math.min(...before));
        best = before[place - start];
      }
      sum[at - from] = best + cost(line, at);
      back[at - from] = place;
    }
    sums.push(sum);
    came.push(back);
  });
  const path = new Int32Array(intervals.length);
  for (let line = intervals.length - 1; line >= 0; line -= 1) {
    const { from } = intervals[line];
    path[line] =
      line === intervals.length - 1
        ? from + sums[line].indexOf(Math.min(...sums[line]))
        : came[line + 1][path[line + 1] - intervals[line + 1].from];
  }
  return path;
}
