/**
 * Tiles of a pair under a given map: all over the working copies, or spread over the full-size
 * captures.
 */
import type { Homography } from '../conventions.ts';
import { bendNear, type Radial } from '../radial.ts';
import { drawnWindow } from './full-window.ts';
import { compose } from './homography.ts';
import { createCorrelator, type Spectrum } from './phase-correlation.ts';
import {
  peaksAgainst,
  tileFields,
  tileLowPass,
  tilePlaces,
  tileShifts,
  tileSpectra,
  type Tile,
  type TileSettings,
} from './tile-shifts.ts';
import { warpPlane } from './warp-plane.ts';
import { cutWindow, type WorkingPair } from './working-pair.ts';

/** Tiles of the full-size captures at most, along the longer and the shorter side. */
const most = { along: 14, across: 10 };
/** All of them, or every second one: the same places, so that the base is looked at once. */
export type Spread = 'dense' | 'sparse';
/** Samples around a full-size tile that the smoothing of its fields needs, pixels. */
const margin = 14;

interface Side {
  /** Side of a tile, pixels, a power of two. */
  readonly side: number;
}

/** @param toMoving From base to moving, pixels of the working copies at `level`. */
export function workingTiles(
  pair: WorkingPair,
  toMoving: Homography,
  settings: TileSettings & Side,
  level = 0,
): readonly Tile[] {
  const base = pair.base.levels[level];
  const interpolation = level === 0 ? 'cubic' : 'linear';
  const moving = pair.moving.levels[level];
  const drawn = warpPlane(moving, toMoving, base.width, base.height, interpolation);
  const correlator = createCorrelator(settings.side, tileLowPass);
  return tileShifts(tileFields(base), tileFields(drawn), correlator, settings);
}

/** Spectra of the base's tiles by place, which do not change while a map is corrected. */
export type KnownTiles = Map<string, readonly Spectrum[] | null>;

/**
 * @param toMoving From base to moving, common pixels.
 * @param known Of this pair and this side of a tile; what is missing is added.
 * @param radial What is done to a pixel of the base first; null for nothing.
 */
export function fullTiles(
  pair: WorkingPair,
  toMoving: Homography,
  settings: Omit<TileSettings, 'step'> & Side,
  spread: Spread,
  known: KnownTiles,
  radial: Radial | null = null,
): readonly Tile[] {
  const { width, height } = pair.base.plane;
  const { side } = settings;
  const length = side + 2 * margin;
  const correlator = createCorrelator(side, tileLowPass);
  const tiles: Tile[] = [];
  for (const [x, y] of windowPlaces(width, height, side, spread)) {
    const still = stillSpectra(x, y);
    const [cx, cy] = [x + (side - 1) / 2, y + (side - 1) / 2];
    // Over one tile a bend differs from its first two terms by less than a hundredth of a pixel.
    const map = radial ? compose(toMoving, bendNear(radial, cx, cy)) : toMoving;
    const drawn = still && drawnWindow(pair, map, x - margin, y - margin, length, length);
    if (!still || !drawn) continue;
    const peaks = peaksAgainst(still, tileFields(drawn), correlator, margin, margin, settings);
    if (peaks) tiles.push({ x: cx, y: cy, peaks });
  }
  return tiles;

  function stillSpectra(x: number, y: number): readonly Spectrum[] | null {
    const place = `${x} ${y}`;
    const found = known.get(place);
    if (found !== undefined) return found;
    const window = cutWindow(pair, pair.base, x - margin, y - margin, length, length);
    const made = tileSpectra(tileFields(window), correlator, margin, margin);
    known.set(place, made);
    return made;
  }
}

/** Top-left corners of windows spread evenly over a picture; sparse ones lie as on a chequerboard. */
function windowPlaces(
  width: number,
  height: number,
  side: number,
  spread: Spread,
): readonly (readonly [x: number, y: number])[] {
  const wide = width >= height;
  const xs = places(width, side, wide ? most.along : most.across);
  const ys = places(height, side, wide ? most.across : most.along);
  const all = ys.flatMap((y, j) => xs.map((x, i) => ({ x, y, odd: (i + j) % 2 === 1 })));
  return all.filter(({ odd }) => spread === 'dense' || !odd).map(({ x, y }) => [x, y] as const);
}

function places(extent: number, side: number, limit: number): readonly number[] {
  return tilePlaces(extent, side, Math.max(side * 0.75, (extent - side) / (limit - 1)));
}
