/**
 * How well the captures lie on each other, region by region, for the captures page.
 *
 * The figure of a region is the median length of what its agreeing tiles still find between the
 * captures. A tile's own noise is in it, so it is an upper bound of the misalignment there.
 */
import type { CheckedTile } from './tile-check.ts';

export interface ResidualGrid {
  readonly columns: number;
  readonly rows: number;
  /** Row-major; pixels of the base, null where no tile could tell. */
  readonly pixels: readonly (number | null)[];
}

/** Regions along the longer side. */
const along = 6;

/** @param size Of the base, pixels; the tiles are in its pixels too. */
export function residualMap(
  tiles: readonly CheckedTile[],
  size: { readonly width: number; readonly height: number },
): ResidualGrid {
  const { width, height } = size;
  const region = Math.max(width, height) / along;
  const columns = Math.max(1, Math.round(width / region));
  const rows = Math.max(1, Math.round(height / region));
  const lengths = Array.from({ length: columns * rows }, (): number[] => []);
  for (const tile of tiles) {
    const column = Math.min(columns - 1, Math.floor(((tile.x + 0.5) / width) * columns));
    const row = Math.min(rows - 1, Math.floor(((tile.y + 0.5) / height) * rows));
    lengths[row * columns + column].push(Math.hypot(tile.dx, tile.dy));
  }
  return { columns, rows, pixels: lengths.map(median) };
}

function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
