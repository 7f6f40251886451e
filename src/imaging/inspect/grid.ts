/** A coarse map over a picture: what a measure found in each cell, row-major. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  /** NaN where nothing could be measured. */
  readonly values: Float64Array;
}

/** Edges, in pixels, of `cells` nearly equal cells along a side of `length` pixels. */
export function cellEdges(length: number, cells: number): Int32Array {
  return Int32Array.from({ length: cells + 1 }, (_, k) => Math.round((k * length) / cells));
}

/** The mean of a grid's cells over fewer cells; cells with no value are left out of the mean. */
export function coarsen(grid: Grid, columns: number, rows: number): Grid {
  if (grid.columns <= columns && grid.rows <= rows) return grid;
  const across = cellEdges(grid.columns, Math.min(columns, grid.columns));
  const down = cellEdges(grid.rows, Math.min(rows, grid.rows));
  const width = across.length - 1;
  const height = down.length - 1;
  const values = new Float64Array(width * height);
  for (let r = 0; r < height; r += 1) {
    for (let c = 0; c < width; c += 1) {
      let sum = 0;
      let n = 0;
      for (let y = down[r]; y < down[r + 1]; y += 1) {
        for (let x = across[c]; x < across[c + 1]; x += 1) {
          const value = grid.values[y * grid.columns + x];
          if (Number.isNaN(value)) continue;
          sum += value;
          n += 1;
        }
      }
      values[r * width + c] = n > 0 ? sum / n : NaN;
    }
  }
  return { columns: width, rows: height, values };
}
