/**
 * The small projective map that fits the displacements of many tiles, robustly.
 *
 * References
 * - Holland, P. W. and Welsch, R. E. (1977). Robust regression using iteratively reweighted
 *   least-squares. Communications in Statistics A6(9), 813-827. doi:10.1080/03610927708827533
 * - Beaton, A. E. and Tukey, J. W. (1974). The fitting of power series, meaning polynomials,
 *   illustrated on band-spectroscopic data. Technometrics 16(2), 147-185.
 *   doi:10.1080/00401706.1974.10489171 (the biweight)
 */
import { project, type Homography } from '../conventions.ts';
import { bend, radialAbout } from '../radial.ts';
import { fitIncrement, pulls, type Increment, type Measured, type Pull } from './fit-increment.ts';
import type { Freedom } from './gauss-newton-step.ts';
import type { Peak } from './phase-correlation.ts';
import type { Displacement } from './tile-consensus.ts';
import type { Tile } from './tile-shifts.ts';

/** Rounds of choosing peaks and fitting them. */
const rounds = 6;
/**
 * Rounds after these in which only tiles near the fit have a say. Along a plate's edge a low
 * lamp throws a shadow: a whole row of tiles there lies half a pixel aside, well within what the
 * other rounds let pass, and pulls a corner with it.
 */
const closeRounds = 5;
/** 4.685: 95 % efficiency on normal errors (Holland and Welsch 1977, table 1). */
const biweightTuning = 4.685;
/** Median distance from the centre of a round normal distribution, standard deviations. */
const medianDistance = Math.sqrt(2 * Math.log(2));
/** Never nearer than this, pixels: a correlation's peak is interpolated, and a plate is not flat. */
const closest = 0.15;
/** Close rounds need so many tiles, and this share of those that the fit before them had. */
const fewest = { tiles: 24, share: 0.5 };

/**
 * Choose of each tile the peak nearest to what the map so far says, fit, and choose again.
 *
 * @param tolerance Distance in pixels at which a peak has no weight in the first round.
 * @returns D with new map = present map * D, or null when fewer than three tiles agree.
 */
export function fitTiles(
  tiles: readonly Tile[],
  start: Displacement,
  tolerance: number,
  width: number,
  height: number,
  freedom: Freedom,
): Homography | null {
  return fitRounds(tiles, start, tolerance, width, height, pulls[freedom], false)?.map ?? null;
}

/** The same with all eight parameters, from no displacement, for the last digits. */
export function fitTilesClosely(
  tiles: readonly Tile[],
  tolerance: number,
  width: number,
  height: number,
): Homography | null {
  return (
    fitRounds(tiles, () => [0, 0], tolerance, width, height, pulls[8], false, true)?.map ?? null
  );
}

/** The same with a radial term. */
export function fitBentTiles(
  tiles: readonly Tile[],
  tolerance: number,
  width: number,
  height: number,
): Increment | null {
  return fitRounds(tiles, () => [0, 0], tolerance, width, height, pulls[8], true, true);
}

function fitRounds(
  tiles: readonly Tile[],
  start: Displacement,
  tolerance: number,
  width: number,
  height: number,
  pull: Pull,
  bent: boolean,
  closely = false,
): Increment | null {
  let displacement = start;
  let reach = tolerance;
  let fitted: Increment | null = null;
  for (let round = 0; round < rounds; round += 1) {
    const points = tiles.flatMap((tile) => choosePeak(tile, displacement, reach));
    if (points.length < 3) return null;
    fitted = fitIncrement(points, width, height, pull, bent);
    if (!fitted) return null;
    displacement = displacementOf(fitted, width, height);
    const deviation = weightedDeviation(points);
    reach = Math.max(reach * 0.75, Math.min(tolerance, Math.max(1, 3 * deviation)));
  }
  if (!fitted || !closely) return fitted;
  const among = tiles.flatMap((tile) => choosePeak(tile, displacement, reach)).length;
  for (let round = 0; round < closeRounds; round += 1) {
    const near = tiles.flatMap((tile) => choosePeak(tile, displacement, reach));
    const deviation = median(near.map(({ miss }) => miss)) / medianDistance;
    const close = Math.min(reach, Math.max(closest, biweightTuning * deviation));
    const points = tiles.flatMap((tile) => choosePeak(tile, displacement, close));
    if (points.length < Math.max(fewest.tiles, fewest.share * among)) return fitted;
    const next = fitIncrement(points, width, height, pull, bent);
    if (!next) return fitted;
    fitted = next;
    displacement = displacementOf(fitted, width, height);
  }
  return fitted;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? NaN;
}

function displacementOf(
  { map, coefficient }: Increment,
  width: number,
  height: number,
): Displacement {
  const radial = radialAbout(width, height, coefficient);
  return (x, y) => {
    const [px, py] = project(map, x, y);
    const [bx, by] = bend(radial, x, y);
    return [px + bx - 2 * x, py + by - 2 * y];
  };
}

interface Chosen extends Measured {
  /** Distance from the displacement that was expected, pixels. */
  readonly miss: number;
}

function choosePeak(tile: Tile, expected: Displacement, reach: number): readonly Chosen[] {
  const [ex, ey] = expected(tile.x, tile.y);
  let chosen: Peak | null = null;
  let miss = 0;
  let least = Infinity;
  for (const peak of tile.peaks) {
    const distance = Math.hypot(peak.dx - ex, peak.dy - ey);
    // A higher peak may lie a little farther away.
    const cost = distance - 0.045 * peak.z * reach;
    if (distance >= reach || cost >= least) continue;
    chosen = peak;
    miss = distance;
    least = cost;
  }
  if (!chosen) return [];
  const weight = Math.max(0.1, chosen.z - 2.5) ** 1.5 * (1 - (miss / reach) ** 2) ** 2;
  return [{ x: tile.x, y: tile.y, dx: chosen.dx, dy: chosen.dy, weight, miss }];
}

function weightedDeviation(points: readonly Chosen[]): number {
  let squares = 0;
  let weights = 0;
  for (const { weight, miss } of points) {
    squares += weight * miss * miss;
    weights += weight;
  }
  return Math.sqrt(squares / Math.max(1e-9, weights));
}
