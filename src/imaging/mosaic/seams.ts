/**
 * Where one close-up gives way to the next: in each row of the grid a seam from top to bottom
 * between neighbours, and between two rows one seam from left to right across the mosaic.
 *
 * A seam stays between the middles of its two tiles, so that seams never cross.
 */
import { median } from '../inspect/quantile.ts';
import { white } from '../registration/masked-plane.ts';
import type { CellGrid, CellTile } from './cells.ts';
import { seamPath, type Interval } from './seam-path.ts';

/** One row of the grid, from the top of the mosaic. */
export interface Band {
  /** Tiles from the left. */
  readonly tiles: readonly number[];
  /** Between neighbours: x in cells for each row of cells. */
  readonly seams: readonly (readonly number[])[];
}

export interface Seams {
  readonly bands: readonly Band[];
  /** Between bands: y in cells for each column of cells. */
  readonly between: readonly (readonly number[])[];
}

/** A seam keeps so far from the ends of what both tiles show, pixels, where there is room. */
const keepAway = 24;
/** Added to the difference of two cells, so that a seam does not wander through level ground. */
const lengthCost = 0.01;
/** Added to linear light (0 to 1) before its logarithm: differences in the dark count little. */
const floor = 0.01;

type Lookup = (x: number, y: number) => number;

/**
 * @param tiles Balanced.
 * @param rows Row in the grid of each tile.
 */
export function findSeams(
  tiles: readonly CellTile[],
  rows: readonly number[],
  grid: CellGrid,
): Seams {
  const middle = tiles.map((t) => [t.left + t.width / 2, t.top + t.height / 2] as const);
  const logs = tiles.map(logOf);
  const away = Math.ceil(keepAway / grid.cell);
  const bands = [...new Set(rows)]
    .map((row) => tiles.map((_, t) => t).filter((t) => rows[t] === row))
    .sort((a, b) => median(a.map((t) => middle[t][1])) - median(b.map((t) => middle[t][1])))
    .map((members): Band => {
      const ordered = members.toSorted((a, b) => middle[a][0] - middle[b][0]);
      const seams = ordered.slice(1).map((right, k) => {
        const left = ordered[k];
        const limits = { from: Math.ceil(middle[left][0]), to: Math.floor(middle[right][0]) };
        const at =
          (of: number): Lookup =>
          (line, x) =>
            logs[of](x, line);
        return seam(grid.rows, limits, away, at(left), at(right));
      });
      return { tiles: ordered, seams };
    });
  const composed = bands.map((band) => bandLookup(band, logs));
  const between = bands.slice(1).map((lower, k) => {
    const limits = {
      from: Math.ceil(median(bands[k].tiles.map((t) => middle[t][1]))),
      to: Math.floor(median(lower.tiles.map((t) => middle[t][1]))),
    };
    return seam(grid.columns, limits, away, composed[k], composed[k + 1]);
  });
  return { bands, between };
}

/** Logarithm of light, for comparing; NaN where there is nothing. */
function logOf({ left, top, width, height, light }: CellTile): Lookup {
  const log = light.map((v) => (v < 0 ? NaN : Math.log(floor + v / white)));
  return (x, y) => {
    const [u, v] = [x - left, y - top];
    return u < 0 || v < 0 || u >= width || v >= height ? NaN : log[v * width + u];
  };
}

/** What a row of the grid shows once its own seams are chosen. */
function bandLookup({ tiles, seams }: Band, logs: readonly Lookup[]): Lookup {
  return (x, y) => {
    const k = seams.findIndex((s) => x < s[y]);
    return logs[tiles[k < 0 ? tiles.length - 1 : k]](x, y);
  };
}

/**
 * Position of a seam on each line, cells. Where only one of the two has something, the seam is
 * put where that one ends; where neither has, it goes on as before.
 */
function seam(
  lines: number,
  limits: Interval,
  away: number,
  before: Lookup,
  after: Lookup,
): number[] {
  const found = Array.from({ length: lines }, (_, line) =>
    sharedInterval(line, limits, away, before, after),
  );
  const positions = new Array<number>(lines).fill(NaN);
  for (let line = 0; line < lines;) {
    let end = line;
    const run: Interval[] = [];
    for (; end < lines; end += 1) {
      const { shared } = found[end];
      if (!shared) break;
      run.push(shared);
    }
    if (run.length > 0) {
      const path = seamPath(run, (k, at) => {
        const difference = Math.abs(before(line + k, at) - after(line + k, at));
        // Inside the interval a cell may still be empty, at a corner.
        return lengthCost + (Number.isNaN(difference) ? 10 : difference);
      });
      path.forEach((at, k) => (positions[line + k] = at + 0.5));
      line = end;
    } else {
      positions[line] = found[line].alone;
      line += 1;
    }
  }
  return filled(positions, (limits.from + limits.to) / 2);
}

/** Cells that both have, less those near the ends; else where the one that is there alone ends. */
function sharedInterval(
  line: number,
  limits: Interval,
  away: number,
  before: Lookup,
  after: Lookup,
) {
  let [from, to, lastBefore, firstAfter] = [Infinity, -Infinity, NaN, NaN];
  for (let at = limits.from; at <= limits.to; at += 1) {
    const hasBefore = !Number.isNaN(before(line, at));
    const hasAfter = !Number.isNaN(after(line, at));
    if (hasBefore) lastBefore = at;
    if (hasAfter && Number.isNaN(firstAfter)) firstAfter = at;
    if (!hasBefore || !hasAfter) continue;
    from = Math.min(from, at);
    to = Math.max(to, at);
  }
  if (to - from >= 2) {
    const margin = Math.max(1, Math.min(away, Math.floor((to - from) / 3)));
    return { shared: { from: from + margin, to: to - margin }, alone: NaN };
  }
  const ends = [lastBefore + 1, firstAfter].filter((v) => !Number.isNaN(v));
  const alone = ends.length === 0 ? NaN : ends.reduce((a, b) => a + b) / ends.length;
  return { shared: null, alone };
}

/** Gaps take the nearest position before them, or the first after. */
function filled(positions: number[], otherwise: number): number[] {
  let last = positions.find((p) => !Number.isNaN(p)) ?? otherwise;
  return positions.map((p) => {
    if (!Number.isNaN(p)) last = p;
    return last;
  });
}
