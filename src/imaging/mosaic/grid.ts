/**
 * The grid of a mosaic: which close-ups lie beside each other, and where each is expected.
 *
 * Rows run down and columns to the right, as the sitting records them; a cell may be empty.
 */
import { median } from '../inspect/quantile.ts';

export interface GridTile {
  readonly row: number;
  readonly column: number;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

export interface GridPair {
  /** Indices in the list of tiles. */
  readonly first: number;
  readonly second: number;
  /** Where the second lies, seen from the first. */
  readonly side: 'right' | 'below';
}

/** Distance between neighbours, pixels. */
export interface Pitch {
  readonly across: number;
  readonly down: number;
}

/** Pairs of tiles that share an edge in the grid, in the order of the tiles. */
export function neighbourPairs(tiles: readonly GridTile[]): readonly GridPair[] {
  const at = new Map(tiles.map((tile, i) => [`${tile.row},${tile.column}`, i]));
  return tiles.flatMap(({ row, column }, first) => {
    const right = at.get(`${row},${column + 1}`);
    const below = at.get(`${row + 1},${column}`);
    return [
      ...(right === undefined ? [] : [{ first, second: right, side: 'right' as const }]),
      ...(below === undefined ? [] : [{ first, second: below, side: 'below' as const }]),
    ];
  });
}

/** @param overlap Share of each side that neighbours have in common, 0 to 1. */
export function pitchOf(tiles: readonly GridTile[], overlap: number): Pitch {
  return {
    across: median(tiles.map((t) => t.width)) * (1 - overlap),
    down: median(tiles.map((t) => t.height)) * (1 - overlap),
  };
}

/** Cells of the smallest rectangle around the tiles that hold none. */
export function emptyCells(
  tiles: readonly Pick<GridTile, 'row' | 'column'>[],
): readonly { readonly row: number; readonly column: number }[] {
  const rows = tiles.map((t) => t.row);
  const columns = tiles.map((t) => t.column);
  const taken = new Set(tiles.map((t) => `${t.row},${t.column}`));
  const empty: { row: number; column: number }[] = [];
  for (let row = Math.min(...rows); row <= Math.max(...rows); row += 1) {
    for (let column = Math.min(...columns); column <= Math.max(...columns); column += 1) {
      if (!taken.has(`${row},${column}`)) empty.push({ row, column });
    }
  }
  return empty;
}
