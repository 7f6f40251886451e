/**
 * What raking light adds: light that some bearings of the lamp bring out and others do not. A
 * scratch glints from across and not from along, a dent has a bright and a dark side, dust a
 * bright one; what particles scatter is there from every bearing.
 *
 * The shared part is the smallest value, or with four bearings and more the second smallest, so
 * that one shadow does not decide; the brightest is the largest, or with six and more the second
 * largest, so that one glare does not.
 */

/** Bearings from which one low, and one high, value is left out. */
const robustLow = 4;
const robustHigh = 6;

/** Light, linear, by which the brightest bearings exceed what all share; never below 0. */
export function rakingExcess(values: ArrayLike<number>): number {
  const n = values.length;
  let lowest = Infinity;
  let low = Infinity;
  let highest = -Infinity;
  let high = -Infinity;
  for (let i = 0; i < n; i += 1) {
    const v = values[i];
    if (v < lowest) {
      low = lowest;
      lowest = v;
    } else if (v < low) low = v;
    if (v > highest) {
      high = highest;
      highest = v;
    } else if (v > high) high = v;
  }
  return (n >= robustHigh ? high : highest) - (n >= robustLow ? low : lowest);
}

/** Mean light of the cells of a grid, row-major. */
export interface LightGrid {
  readonly columns: number;
  readonly rows: number;
  readonly means: Float64Array;
}

/**
 * What each frame is to be multiplied by so that all are equally bright cell by cell: a near lamp
 * lights its own side of the plate more. A cell without light keeps its frames as they are.
 */
export function eveningGains(grids: readonly LightGrid[]): LightGrid[] {
  const count = grids.length;
  return grids.map((grid) => ({
    ...grid,
    means: grid.means.map((own, cell) => {
      const common = grids.reduce((sum, other) => sum + other.means[cell], 0) / count;
      return own > 0 && common > 0 ? common / own : 1;
    }),
  }));
}

/** One row of a grid at full size, bilinear between the middles of its cells. `down` is 0 to 1. */
export function gridRow(
  { columns, rows, means }: LightGrid,
  down: number,
  out: Float32Array,
): void {
  const y = Math.min(rows - 1, Math.max(0, down * rows - 0.5));
  const j = Math.min(rows - 2, Math.floor(y));
  const v = y - j;
  const line = Float64Array.from({ length: columns }, (_, i) => {
    const at = j * columns + i;
    return means[at] * (1 - v) + means[at + columns] * v;
  });
  const scale = columns / out.length;
  for (let x = 0; x < out.length; x += 1) {
    let place = (x + 0.5) * scale - 0.5;
    place = place < 0 ? 0 : place > columns - 1 ? columns - 1 : place;
    const i = place >= columns - 1 ? columns - 2 : place | 0;
    out[x] = line[i] + (line[i + 1] - line[i]) * (place - i);
  }
}
