/**
 * The gate: do many small tiles, each asked on its own, say that the two captures lie on each
 * other? A wrong alignment can fool one measure of likeness over the whole picture; it cannot
 * make a quarter of all tiles find their highest peak at no displacement.
 */
import type { Homography } from '../conventions.ts';
import { fullWindow } from './full-window.ts';
import { windowPlaces } from './full-resolution.ts';
import { gradientField, type GradientField } from './gradient-field.ts';
import { solveInPlace } from './linear-system.ts';
import type { MaskedPlane } from './masked-plane.ts';
import { createCorrelator } from './phase-correlation.ts';
import { tilePeaks, tileShifts, type Tile } from './tile-shifts.ts';
import { warpPlane } from './warp-plane.ts';
import { toWorking, type WorkingPair } from './working-pair.ts';

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

/** Side of a tile, distance between tiles and largest displacement, pixels. */
const side = 128;
const step = 96;
const reach = 8;
/** Tiles at most along the longer and shorter side when read from the full-size captures. */
const most = { along: 14, across: 10 };

/** Two smoothings before the gradient, and that of the field, pixels. */
export const tileSigmas = [1, 2.2] as const;
export const tileFieldSigma = 0.7;
/** Low-pass of the tile correlation, cycles per pixel. */
export const tileLowPass = 0.16;

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
  const drawn = warpPlane(pair.moving.levels[0], toMoving, base.width, base.height, 'cubic');
  const correlator = createCorrelator(side, tileLowPass);
  const settings = { step, reach, peaks: 1 };
  const tiles = tileShifts(tileFields(base), tileFields(drawn), correlator, settings);
  return summarise(tiles, base, pair.factor * pair.base.pitch);
}

/** Check a map between common pixels on windows of the full-size captures. */
export function checkFull(pair: WorkingPair, toMoving: Homography): TileCheck {
  const { plane, pitch } = pair.base;
  const correlator = createCorrelator(side, tileLowPass);
  const tiles: Tile[] = [];
  for (const [x, y] of windowPlaces(plane.width, plane.height, side, most)) {
    // Smoothing needs neighbours: the fields are made with a margin.
    const margin = 10;
    const length = side + 2 * margin;
    const window = fullWindow(pair, toMoving, x - margin, y - margin, length, length);
    if (!window) continue;
    const still = tileFields(window.still);
    const drawn = tileFields(window.drawn);
    const peaks = tilePeaks(still, drawn, correlator, margin, margin, { reach, peaks: 1 });
    if (peaks) tiles.push({ x: x + (side - 1) / 2, y: y + (side - 1) / 2, peaks });
  }
  return summarise(tiles, plane, pitch);
}

/** The better of a check at full size and one on the working copies. */
export function checkPair(pair: WorkingPair, toMoving: Homography): TileCheck {
  if (pair.factor === 1) return checkWorking(pair, toMoving);
  const full = checkFull(pair, toMoving);
  if (passes(full)) return full;
  // Soft captures have no detail at full size, yet may be aligned well enough without it.
  const working = checkWorking(pair, toWorking(toMoving, pair));
  return passes(working) || working.agreed * full.tried > full.agreed * working.tried
    ? working
    : full;
}

/** Fields of a plane at the smoothings of the tile stages. */
export function tileFields(plane: MaskedPlane): readonly GradientField[] {
  return tileSigmas.map((sigma) => gradientField(plane, sigma, tileFieldSigma));
}

function summarise(
  tiles: readonly Tile[],
  frame: { readonly width: number; readonly height: number },
  pitch: number,
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
    cornerDeviation: pitch * cornerDeviation(agreeing, frame.width, frame.height),
    tiles: agreeing.map((t) => ({
      x: pitch * t.x + shift,
      y: pitch * t.y + shift,
      dx: pitch * t.dx,
      dy: pitch * t.dy,
    })),
  };
}

/**
 * Standard deviation at the worst corner of an affine map fitted to tiles that scatter as these
 * do (Draper, N. R. and Smith, H. (1998). Applied Regression Analysis, 3rd ed., section 5.1).
 * The scatter is taken about no displacement, so that a common displacement counts as error.
 *
 * @returns Infinity for fewer than four tiles.
 */
export function cornerDeviation(
  tiles: readonly CheckedTile[],
  width: number,
  height: number,
): number {
  if (tiles.length < 4) return Infinity;
  const scale = width / 2;
  const normal = [1e-6, 0, 0, 0, 1e-6, 0, 0, 0, 1e-6];
  let squares = 0;
  for (const t of tiles) {
    const row = [1, (t.x - (width - 1) / 2) / scale, (t.y - (height - 1) / 2) / scale];
    for (let i = 0; i < 9; i += 1) normal[i] += row[Math.floor(i / 3)] * row[i % 3];
    squares += t.dx * t.dx + t.dy * t.dy;
  }
  let worst = 0;
  for (const [u, v] of [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ]) {
    const row = [1, u, (v * height) / width];
    const solved = solveInPlace(Float64Array.from(normal), Float64Array.from(row));
    if (!solved) return Infinity;
    worst = Math.max(worst, row[0] * solved[0] + row[1] * solved[1] + row[2] * solved[2]);
  }
  return Math.sqrt((squares / tiles.length) * worst);
}
