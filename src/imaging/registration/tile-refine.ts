/**
 * The last digits, from many small tiles: what each of them still finds between the captures
 * corrects the map. More faithful than following the slope of the whole picture, in which
 * structures that only one capture shows pull to one side.
 */
import type { Homography } from '../conventions.ts';
import { compose, normalise } from './homography.ts';
import { fullTiles, workingTiles, type KnownTiles } from './pair-tiles.ts';
import { fitTiles } from './tile-fit.ts';
import type { Tile } from './tile-shifts.ts';
import type { WorkingPair } from './working-pair.ts';

/** Side of a tile, distance between them, largest displacement, pixels; peaks kept of each. */
const working = { side: 128, step: 80, reach: 4, peaks: 4 };
const full = { side: 128, reach: 8, peaks: 4 };
/** Distance at which a tile has no say in the first round, pixels. */
const tolerance = { working: 3, full: 6 };
/** Corrections in a row: the second starts from what the first has found. */
const passes = 2;

/** @returns The corrected map between working copies, or the given one where too few tiles agree. */
export function refineOnWorking(pair: WorkingPair, toMoving: Homography): Homography {
  let map = toMoving;
  for (let pass = 0; pass < passes; pass += 1) {
    const tiles = workingTiles(pair, map, working);
    map = corrected(map, tiles, tolerance.working, pair.base.levels[0]);
  }
  return map;
}

/** @returns The corrected map between common pixels, or the given one where too few tiles agree. */
export function refineOnFull(
  pair: WorkingPair,
  toMoving: Homography,
  known: KnownTiles = new Map(),
): Homography {
  let map = toMoving;
  for (let pass = 0; pass < passes; pass += 1) {
    // The first pass only has to come near.
    const spread = pass === 0 ? 'sparse' : 'dense';
    const tiles = fullTiles(pair, map, full, spread, known);
    map = corrected(map, tiles, tolerance.full, pair.base.plane);
  }
  return map;
}

function corrected(
  map: Homography,
  tiles: readonly Tile[],
  reach: number,
  { width, height }: { readonly width: number; readonly height: number },
): Homography {
  const step = fitTiles(tiles, () => [0, 0], reach, width, height, 8);
  return step ? normalise(compose(map, step)) : map;
}
