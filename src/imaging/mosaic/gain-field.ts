/** A slow field of gains over one close-up: a coarse grid of logarithms, straight lines between its nodes. */
import type { CellTile } from './cells.ts';

/** Natural logarithms of gains on a grid of nodes over one tile. */
export interface GainField {
  /** Of the first node, cells of the mosaic; then one node every `stepX` and `stepY` cells. */
  readonly left: number;
  readonly top: number;
  readonly stepX: number;
  readonly stepY: number;
  readonly columns: number;
  readonly rows: number;
  readonly log: readonly number[];
}

/** Nodes along the longer side of a tile. */
const nodesAlong = 10;

/** A tile with its gains applied. */
export function balanced(tile: CellTile, field: GainField): CellTile {
  const light = tile.light.slice();
  const gains = new Float32Array(tile.width);
  for (let y = 0, i = 0; y < tile.height; y += 1) {
    gainRow(field, tile.top + y, tile.left, 1, gains);
    for (let x = 0; x < tile.width; x += 1, i += 1) if (light[i] >= 0) light[i] *= gains[x];
  }
  return { ...tile, light };
}

/**
 * Gains along one row of the mosaic, linear light, between nodes in a straight line.
 *
 * @param y Cells, as `x` of the first and `step` to the next of the `out.length` gains.
 */
export function gainRow(
  { left, top, stepX, stepY, columns, rows, log }: GainField,
  y: number,
  x: number,
  step: number,
  out: Float32Array,
): void {
  const v = Math.max(0, Math.min(rows - 1, (y - top) / stepY));
  const j = Math.min(rows - 2, Math.floor(v));
  const gains = new Float64Array(columns);
  for (let i = 0; i < columns; i += 1) {
    const above = log[j * columns + i];
    gains[i] = Math.exp(above + (v - j) * (log[(j + 1) * columns + i] - above));
  }
  for (let k = 0; k < out.length; k += 1) {
    const u = Math.max(0, Math.min(columns - 1, (x + k * step - left) / stepX));
    const i = Math.min(columns - 2, Math.floor(u));
    out[k] = gains[i] + (u - i) * (gains[i + 1] - gains[i]);
  }
}

/** A field over a tile, its gains still to be found. */
export function emptyField({ left, top, width, height }: CellTile): GainField {
  const spacing = Math.max(width, height) / (nodesAlong - 1);
  const columns = Math.max(2, Math.round(width / spacing) + 1);
  const rows = Math.max(2, Math.round(height / spacing) + 1);
  const [stepX, stepY] = [
    Math.max(1, width - 1) / (columns - 1),
    Math.max(1, height - 1) / (rows - 1),
  ];
  return { left, top, stepX, stepY, columns, rows, log: [] };
}

/** The four nodes around a cell and their shares. */
export function nodesAt(
  { left, top, stepX, stepY, columns, rows }: GainField,
  x: number,
  y: number,
) {
  const u = Math.max(0, Math.min(columns - 1, (x - left) / stepX));
  const v = Math.max(0, Math.min(rows - 1, (y - top) / stepY));
  const i = Math.min(columns - 2, Math.floor(u));
  const j = Math.min(rows - 2, Math.floor(v));
  const [fx, fy] = [u - i, v - j];
  const node = j * columns + i;
  return [
    { node, share: (1 - fx) * (1 - fy) },
    { node: node + 1, share: fx * (1 - fy) },
    { node: node + columns, share: (1 - fx) * fy },
    { node: node + columns + 1, share: fx * fy },
  ];
}
