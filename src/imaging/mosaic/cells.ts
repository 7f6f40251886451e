/**
 * Close-ups drawn small on one grid over the mosaic: enough to choose seams and to balance tones
 * without holding the pictures themselves.
 */
import { project, type Homography } from '../conventions.ts';
import type { Plane16 } from '../plane.ts';
import { compose, enlargement, invert } from '../registration/homography.ts';

/** Luminance of one tile on the mosaic's cells. */
export interface CellTile {
  /** First cell in the mosaic's grid. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Linear, 0 to 65535; -1 where the tile has nothing. */
  readonly light: Float32Array;
}

export interface CellGrid {
  /** Side of a cell, pixels of the mosaic. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}

export function cellGrid(width: number, height: number, cell: number): CellGrid {
  return { cell, columns: Math.ceil(width / cell), rows: Math.ceil(height / cell) };
}

/**
 * @param small The tile shrunk by `factor`, as by `shrinkPlane`.
 * @param map From the tile at full size to the mosaic.
 */
export function cellTile(
  small: Plane16,
  factor: number,
  map: Homography,
  { cell, columns, rows }: CellGrid,
): CellTile {
  // From cells to the mosaic, to the tile, to the small tile.
  const toSmall = compose(compose(enlargement(1 / factor), invert(map)), enlargement(cell));
  const toCells = invert(toSmall);
  const [w, h] = [small.width - 0.5, small.height - 0.5];
  const points = (
    [
      [-0.5, -0.5],
      [w, -0.5],
      [w, h],
      [-0.5, h],
    ] as const
  ).map(([x, y]) => project(toCells, x, y));
  const span = (axis: 0 | 1, limit: number): readonly [number, number] => {
    const values = points.map((p) => p[axis]);
    const from = Math.max(0, Math.ceil(Math.min(...values)));
    return [from, Math.max(from, Math.min(limit, Math.floor(Math.max(...values)) + 1))];
  };
  const [left, right] = span(0, columns);
  const [top, bottom] = span(1, rows);
  const width = right - left;
  const light = new Float32Array(width * (bottom - top));
  for (let y = top, o = 0; y < bottom; y += 1) {
    for (let x = left; x < right; x += 1, o += 1) {
      light[o] = sample(small, ...project(toSmall, x, y));
    }
  }
  return { left, top, width, height: bottom - top, light };
}

/** Between four samples; the outermost repeat up to the picture's edge, beyond it there is nothing. */
function sample({ width, height, data }: Plane16, x: number, y: number): number {
  if (!(x >= -0.5 && y >= -0.5 && x <= width - 0.5 && y <= height - 0.5)) return -1;
  const cx = Math.max(0, Math.min(width - 1.001, x));
  const cy = Math.max(0, Math.min(height - 1.001, y));
  const [ix, iy] = [Math.floor(cx), Math.floor(cy)];
  const [fx, fy] = [cx - ix, cy - iy];
  const i = iy * width + ix;
  return (
    (data[i] * (1 - fx) + data[i + 1] * fx) * (1 - fy) +
    (data[i + width] * (1 - fx) + data[i + width + 1] * fx) * fy
  );
}

/** Linear luminance of a tile in a cell of the mosaic; -1 where it has nothing. */
export function lightAt(tile: CellTile, x: number, y: number): number {
  const [u, v] = [x - tile.left, y - tile.top];
  if (u < 0 || v < 0 || u >= tile.width || v >= tile.height) return -1;
  return tile.light[v * tile.width + u];
}
