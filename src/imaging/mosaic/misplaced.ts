/**
 * Where a tile belongs that fits none of its recorded neighbours: two names may have been
 * swapped, or a row been counted from the other end. Only small pictures are compared, and a
 * place is named only where the match stands out.
 */
import { coarseOffsets } from './coarse-offset.ts';
import type { GridTile } from './grid.ts';
import type { Survey } from './survey.ts';

export interface Misplaced {
  readonly tile: number;
  /** Where it fits, and beside which tile that was seen; null where it fits nowhere. */
  readonly place: { readonly row: number; readonly column: number; readonly beside: number } | null;
}

/** A peak has to be this high, in standard deviations, and this much higher than the next tile's. */
const leastPeak = 9;
/** Distance from the place in the grid that is looked at, as a share of a tile's side. */
const slop = 0.12;

const sides = [
  { side: 'right', forward: true, row: 0, column: 1 },
  { side: 'right', forward: false, row: 0, column: -1 },
  { side: 'below', forward: true, row: 1, column: 0 },
  { side: 'below', forward: false, row: -1, column: 0 },
] as const;

/** @param placed Tiles whose places are believed. */
export function findPlaces(
  tiles: readonly GridTile[],
  survey: Survey,
  placed: readonly number[],
): readonly Misplaced[] {
  const lost = tiles.map((_, i) => i).filter((i) => !placed.includes(i));
  // Corners of two plates look alike: only a place of the grid that no other tile holds is offered.
  const [rows, columns] = [tiles.map((t) => t.row), tiles.map((t) => t.column)];
  const [bottom, right] = [Math.max(...rows), Math.max(...columns)];
  const isFree = ({ row, column }: { row: number; column: number }): boolean =>
    row >= Math.min(...rows) &&
    row <= bottom &&
    column >= Math.min(...columns) &&
    column <= right &&
    !placed.some((t) => tiles[t].row === row && tiles[t].column === column);
  return lost.map((tile) => {
    let best = leastPeak;
    let place: Misplaced['place'] = null;
    for (const beside of placed) {
      for (const { side, forward, row, column } of sides) {
        const at = { row: tiles[beside].row + row, column: tiles[beside].column + column };
        if (!isFree(at)) continue;
        const [first, second] = forward ? [beside, tile] : [tile, beside];
        const z = peakOf(survey, tiles, first, second, side);
        if (z <= best) continue;
        best = z;
        place = { ...at, beside };
      }
    }
    const own = place?.row === tiles[tile].row && place.column === tiles[tile].column;
    return { tile, place: own ? null : place };
  });
}

function peakOf(
  { coarse, coarseFactor, pitch }: Survey,
  tiles: readonly GridTile[],
  first: number,
  second: number,
  side: 'right' | 'below',
): number {
  const expected = (side === 'right' ? pitch.across : pitch.down) / coarseFactor;
  const extent = side === 'right' ? tiles[first].width : tiles[first].height;
  const reach = (extent * slop) / coarseFactor;
  const [peak] = coarseOffsets(coarse[first], coarse[second], side, expected, reach);
  return (peak as { readonly z: number } | undefined)?.z ?? 0;
}
