/**
 * The gate: do many small tiles, each asked on its own, say that the two captures lie on each
 * other? A wrong alignment can fool one measure of likeness over the whole picture; it cannot
 * make a quarter of all tiles find their highest peak at no displacement.
 */
import type { Homography } from '../conventions.ts';
import type { Radial } from '../radial.ts';
import { solveInPlace } from './linear-system.ts';
import { fullTiles, workingTiles, type KnownTiles } from './pair-tiles.ts';
import type { Tile } from './tile-shifts.ts';
import type { WorkingPair } from './working-pair.ts';

/** What one tile found, in pixels of the base file. */
export interface CheckedTile {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

export interface TileCheck {
  /** Tiles with enough usable samples. */
  readonly tried: number;
  /** Tiles whose highest peak is within {@link agreement} of no displacement. */
  readonly agreed: number;
  /** Least number of agreeing tiles in a quadrant of the base. */
  readonly leastPerQuadrant: number;
  /** Predicted standard deviation at the worst corner, pixels of the base file. */
  readonly cornerDeviation: number;
  /** The tiles that agree. */
  readonly tiles: readonly CheckedTile[];
}

/** Figures that a check has to reach. */
export const gate = {
  /** Share of the tiles tried that must agree. */
  leastShare: 0.25,
  leastPerQuadrant: 3,
  /** Pixels of the base file. */
  mostCornerDeviation: 0.3,
} as const;

/** Distance from no displacement at which a tile still agrees, pixels. */
export const agreement = 1.5;

/**
 * What no number of tiles averages away, pixels: the peak of a correlation is interpolated with
 * an error of its own. Measured on photographs with known maps, where it was 0.01 to 0.02.
 */
const leastDeviation = 0.02;

/** Side of a tile, distance between tiles and largest displacement, pixels. */
const side = 128;
const usualStep = 96;
const reach = 8;
/** Distances between tiles along the shorter side of a small capture, where they overlap more. */
const leastSteps = 4;

export function passes(check: TileCheck): boolean {
  return (
    check.agreed >= gate.leastShare * check.tried &&
    check.leastPerQuadrant >= gate.leastPerQuadrant &&
    check.cornerDeviation <= gate.mostCornerDeviation
  );
}

/** Check a map between working copies on the working copies. */
export function checkWorking(pair: WorkingPair, toMoving: Homography): TileCheck {
  const base = pair.base.levels[0];
  const shorter = Math.min(base.width, base.height);
  const step = Math.min(usualStep, (shorter - side) / leastSteps);
  const tiles = workingTiles(pair, toMoving, { side, step, reach, peaks: 1 });
  // Tiles that overlap more than usual say the same more often, not more precisely.
  return summarise(tiles, base, pair.factor * pair.base.pitch, usualStep / step);
}

/** Check a map between common pixels on windows of the full-size captures. */
export function checkFull(
  pair: WorkingPair,
  toMoving: Homography,
  known: KnownTiles = new Map(),
  radial: Radial | null = null,
): TileCheck {
  const { plane, pitch } = pair.base;
  const tiles = fullTiles(pair, toMoving, { side, reach, peaks: 1 }, 'dense', known, radial);
  return summarise(tiles, plane, pitch, 1, radial !== null);
}

function summarise(
  tiles: readonly Tile[],
  frame: { readonly width: number; readonly height: number },
  pitch: number,
  overlap: number,
  bent = false,
): TileCheck {
  const quadrants = [0, 0, 0, 0];
  const agreeing: CheckedTile[] = [];
  for (const { x, y, peaks } of tiles) {
    const peak = peaks[0];
    if (!peak || Math.hypot(peak.dx, peak.dy) >= agreement) continue;
    quadrants[(x > frame.width / 2 ? 1 : 0) + (y > frame.height / 2 ? 2 : 0)] += 1;
    agreeing.push({ x, y, dx: peak.dx, dy: peak.dy });
  }
  const shift = (pitch - 1) / 2;
  return {
    tried: tiles.length,
    agreed: agreeing.length,
    leastPerQuadrant: Math.min(...quadrants),
    cornerDeviation: pitch * overlap * cornerDeviation(agreeing, frame.width, frame.height, bent),
    tiles: agreeing.map((t) => ({
      x: pitch * t.x + shift,
      y: pitch * t.y + shift,
      dx: pitch * t.dx,
      dy: pitch * t.dy,
    })),
  };
}

/**
 * Standard deviation at the worst corner of a homography fitted to tiles that scatter as these do
 * (Draper, N. R. and Smith, H. (1998). Applied Regression Analysis, 3rd ed., section 5.1). The
 * scatter is taken about no displacement, so that a common displacement counts as error.
 *
 * @param bent Whether a radial term was fitted with it.
 * @returns Pixels; Infinity where the tiles do not fix a homography.
 */
export function cornerDeviation(
  tiles: readonly CheckedTile[],
  width: number,
  height: number,
  bent = false,
): number {
  if (tiles.length < 4) return Infinity;
  const scale = width / 2;
  const count = bent ? 9 : 8;
  const normal = new Float64Array(count * count);
  let squares = 0;
  for (const t of tiles) {
    const u = (t.x - (width - 1) / 2) / scale;
    const v = (t.y - (height - 1) / 2) / scale;
    for (const row of motionRows(u, v, count)) addProducts(normal, row);
    squares += t.dx * t.dx + t.dy * t.dy;
  }
  let worst = 0;
  for (const [u, v] of [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ]) {
    let leverage = 0;
    for (const row of motionRows(u, (v * height) / width, count)) {
      const solved = solveInPlace(normal.slice(), Float64Array.from(row), 1e-10);
      if (!solved) return Infinity;
      leverage += row.reduce((sum, r, i) => sum + r * solved[i], 0);
    }
    worst = Math.max(worst, leverage);
  }
  // Each tile gives two numbers, along x and along y.
  return Math.hypot(Math.sqrt((squares / (2 * tiles.length)) * worst), leastDeviation);
}

/** How a point moves along x and y with each of the first `count` parameters, in half widths. */
function motionRows(u: number, v: number, count: number): readonly (readonly number[])[] {
  const r = u * u + v * v;
  return [
    [u, v, 1, 0, 0, 0, -u * u, -u * v, r * u].slice(0, count),
    [0, 0, 0, u, v, 1, -u * v, -v * v, r * v].slice(0, count),
  ];
}

function addProducts(normal: Float64Array, row: readonly number[]): void {
  const n = row.length;
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) normal[i * n + j] += row[i] * row[j];
  }
}
