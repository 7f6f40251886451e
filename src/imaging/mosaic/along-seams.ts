/** The two tiles that meet along a seam, cell by cell: what levels and steps are measured from. */
import { lightAt, type CellTile } from './cells.ts';
import type { Seams } from './seams.ts';

export interface SeamLine {
  /** Position of the seam on each line, cells. */
  readonly seam: readonly number[];
  /** Light before and after the seam at a place along and across it; below 0 where there is none. */
  readonly light: (line: number, across: number) => readonly [before: number, after: number];
}

export interface SeamLines {
  /** By band, then from the left. */
  readonly within: readonly (readonly SeamLine[])[];
  readonly between: readonly SeamLine[];
}

/** @param tiles Balanced. */
export function alongSeams({ bands, between }: Seams, tiles: readonly CellTile[]): SeamLines {
  return {
    within: bands.map((band) =>
      band.seams.map((seam, k): SeamLine => {
        const [a, b] = [tiles[band.tiles[k]], tiles[band.tiles[k + 1]]];
        return { seam, light: (y, x) => [lightAt(a, x, y), lightAt(b, x, y)] };
      }),
    ),
    between: between.map((seam, k): SeamLine => {
      const shown = (band: number, x: number, y: number): number => {
        const { tiles: members, seams } = bands[band];
        let m = 0;
        while (m < seams.length && x >= (seams[m][y] ?? Infinity)) m += 1;
        return lightAt(tiles[members[m]], x, y);
      };
      return { seam, light: (x, y) => [shown(k, x, y), shown(k + 1, x, y)] };
    }),
  };
}
