/**
 * The last digits, from many small tiles: what each of them still finds between the captures
 * corrects the map. More faithful than following the slope of the whole picture, in which
 * structures that only one capture shows pull to one side.
 */
import type { Homography } from '../conventions.ts';
import { radialAbout, type Radial } from '../radial.ts';
import { compose, normalise } from './homography.ts';
import { fullTiles, workingTiles, type KnownTiles } from './pair-tiles.ts';
import { fitBentTiles, fitTilesClosely } from './tile-fit.ts';
import type { Tile } from './tile-shifts.ts';
import type { WorkingPair } from './working-pair.ts';

/** Side of a tile, distance between them, largest displacement, pixels; peaks kept of each. */
const working = { side: 128, step: 80, reach: 4, peaks: 4 };
const full = { side: 128, reach: 8, peaks: 4 };
/** Distance at which a tile has no say in the first round, pixels. */
const tolerance = { working: 3, full: 6 };
/** Corrections in a row: the second starts from what the first has found. */
const passes = 2;
/** With a radial term one more, since tiles near the corners come within reach one by one. */
const bentPasses = 3;

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

/** A map with a radial term, which is done to a pixel of the base first; common pixels. */
export interface BentMap {
  readonly toMoving: Homography;
  readonly radial: Radial;
}

/** @returns The map with a radial term, or null where too few tiles agree. */
export function refineBentOnFull(
  pair: WorkingPair,
  toMoving: Homography,
  known: KnownTiles,
): BentMap | null {
  const { width, height } = pair.base.plane;
  let bent: BentMap = { toMoving, radial: radialAbout(width, height, 0) };
  for (let pass = 0; pass < bentPasses; pass += 1) {
    const tiles = fullTiles(pair, bent.toMoving, full, 'dense', known, bent.radial);
    const step = fitBentTiles(tiles, tolerance.full, width, height);
    if (!step) return null;
    // Both are small: their product, which the order of the two would change, is left out.
    bent = {
      toMoving: normalise(compose(bent.toMoving, step.map)),
      radial: radialAbout(width, height, bent.radial.coefficient + step.coefficient),
    };
  }
  return bent;
}

function corrected(
  map: Homography,
  tiles: readonly Tile[],
  reach: number,
  { width, height }: { readonly width: number; readonly height: number },
): Homography {
  const step = fitTilesClosely(tiles, reach, width, height);
  return step ? normalise(compose(map, step)) : map;
}
