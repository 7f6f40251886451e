/**
 * Points that two overlapping close-ups have in common, by small windows over their overlap: a
 * sparse look that finds the map between them, then a closer one under that map.
 *
 * A pair is believed when enough of its windows, each asked on its own, agree.
 */
import { project, type Homography } from '../conventions.ts';
import type { Estimate } from '../plane.ts';
import { compose, corners, invert, normalise, translation } from '../registration/homography.ts';
import { createCorrelator } from '../registration/phase-correlation.ts';
import { tileConsensus } from '../registration/tile-consensus.ts';
import { fitTiles } from '../registration/tile-fit.ts';
import { tileLowPass, tilePeaks, type Tile } from '../registration/tile-shifts.ts';
import { gradientField } from '../registration/gradient-field.ts';
import type { MaskedPlane } from '../registration/masked-plane.ts';
import { warpPlane } from '../registration/warp-plane.ts';
import { logWindow, type TileCut } from './tile-cut.ts';

/** A point of the plate, in pixels of both tiles. */
export interface Match {
  readonly first: readonly [x: number, y: number];
  readonly second: readonly [x: number, y: number];
}

export interface PairMatch {
  readonly matches: readonly Match[];
  /** Windows with enough usable samples in the closer look. */
  readonly tried: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Samples around a window that the smoothing of its fields needs, pixels. */
const margin = 14;
/** Samples around a drawn window for its interpolation, pixels. */
const border = 4;
/** Displacement looked at, pixels, peaks kept, and windows along and across the overlap at most. */
const sparse = { reach: 28, peaks: 3, along: 6, across: 1 };
const close = { reach: 6, peaks: 2, along: 6, across: 2 };
/** Smoothing before the gradient and of the field, pixels. Under one light one band will do. */
const sigma = 1;
const fieldSigma = 0.7;
/** Distance from the fitted map at which a window agrees, pixels. */
const agreement = 1;
/** Least windows that agree, and least share of those tried. */
const leastAgreed = 4;
const leastShare = 0.25;

/**
 * @param start From the first tile to the second, pixels; good to about {@link sparse.reach}.
 * @param table From `logTable`.
 */
export function matchPair(
  first: TileCut,
  second: TileCut,
  sizes: readonly [Size, Size],
  start: Homography,
  table: Float32Array,
): Estimate<PairMatch> {
  const overlap = overlapOf(sizes, start);
  if (!overlap) return { ok: false, reason: 'The two do not overlap.' };
  const look = (map: Homography, how: typeof sparse): readonly Tile[] =>
    windowTiles(first, second, overlap, map, how, table);
  const { width, height } = sizes[0];
  const found = look(start, sparse);
  const common = tileConsensus(found, width, height, 4);
  const rough = common && fitTiles(found, common.displacement, 4, width, height, 4);
  if (!rough) return { ok: false, reason: 'No window of the overlap could be found in both.' };
  const map = normalise(compose(start, rough));
  const tiles = look(map, close);
  const fine = fitTiles(tiles, () => [0, 0], 3, width, height, 4);
  const matches = fine ? agreeing(tiles, map, fine) : [];
  const needed = Math.max(leastAgreed, Math.ceil(leastShare * tiles.length));
  if (matches.length < needed) {
    const reason = `${matches.length} of ${tiles.length} windows agree; ${needed} are needed.`;
    return { ok: false, reason };
  }
  return { ok: true, value: { matches, tried: tiles.length } };
}

interface Rectangle extends Size {
  readonly left: number;
  readonly top: number;
}

/** What both tiles show, as a rectangle in the first; null when that is nothing. */
function overlapOf([a, b]: readonly [Size, Size], toSecond: Homography): Rectangle | null {
  const back = invert(toSecond);
  const points = corners(b.width, b.height).map(([x, y]) => project(back, x, y));
  const xs = points.map((p) => p[0]).sort((p, q) => p - q);
  const ys = points.map((p) => p[1]).sort((p, q) => p - q);
  // Of four corners the inner two bound the part that is surely covered.
  const left = Math.max(0, Math.ceil(xs[1]));
  const top = Math.max(0, Math.ceil(ys[1]));
  const width = Math.min(a.width, Math.floor(xs[2]) + 1) - left;
  const height = Math.min(a.height, Math.floor(ys[2]) + 1) - top;
  return width >= 48 && height >= 48 ? { left, top, width, height } : null;
}

function windowTiles(
  first: TileCut,
  second: TileCut,
  overlap: Rectangle,
  map: Homography,
  how: typeof sparse,
  table: Float32Array,
): readonly Tile[] {
  const side = Math.min(overlap.width, overlap.height) >= 112 ? 128 : 64;
  const correlator = createCorrelator(side, tileLowPass);
  const length = side + 2 * margin;
  const wide = overlap.width >= overlap.height;
  const xs = places(overlap.left, overlap.width, side, wide ? how.along : how.across);
  const ys = places(overlap.top, overlap.height, side, wide ? how.across : how.along);
  const reach = Math.min(how.reach, side / 2 - 4);
  const tiles: Tile[] = [];
  for (const y of ys) {
    for (const x of xs) {
      const [left, top] = [x - margin, y - margin];
      const still = field(logWindow(first, left, top, length, length, table));
      const drawn = field(drawnWindow(second, map, left, top, length, table));
      const settings = { reach, peaks: how.peaks };
      const peaks = tilePeaks([still], [drawn], correlator, margin, margin, settings);
      if (peaks) tiles.push({ x: x + (side - 1) / 2, y: y + (side - 1) / 2, peaks });
    }
  }
  return tiles;
}

function field(window: MaskedPlane) {
  return gradientField(window, sigma, fieldSigma);
}

/** Left edges of windows spread evenly, centred where there is room for one alone. */
function places(from: number, extent: number, side: number, limit: number): readonly number[] {
  const room = extent - side;
  const count = Math.max(1, Math.min(limit, Math.floor(room / (0.6 * side)) + 1));
  if (count === 1) return [Math.round(from + room / 2)];
  return Array.from({ length: count }, (_, i) => Math.round(from + (room * i) / (count - 1)));
}

function drawnWindow(
  cut: TileCut,
  map: Homography,
  left: number,
  top: number,
  length: number,
  table: Float32Array,
) {
  const points = corners(length, length).map(([x, y]) => project(map, left + x, top + y));
  const x0 = Math.floor(Math.min(...points.map((p) => p[0]))) - border;
  const y0 = Math.floor(Math.min(...points.map((p) => p[1]))) - border;
  const width = Math.ceil(Math.max(...points.map((p) => p[0]))) + border + 1 - x0;
  const height = Math.ceil(Math.max(...points.map((p) => p[1]))) + border + 1 - y0;
  const window = logWindow(cut, x0, y0, width, height, table);
  const local = compose(compose(translation(-x0, -y0), map), translation(left, top));
  return warpPlane(window, local, length, length, 'cubic');
}

/** Windows whose highest peaks lie where the fit expects them, as points of both tiles. */
function agreeing(tiles: readonly Tile[], map: Homography, fine: Homography): readonly Match[] {
  return tiles.flatMap(({ x, y, peaks }) => {
    const [ex, ey] = project(fine, x, y);
    const peak = peaks.find((p) => Math.hypot(x + p.dx - ex, y + p.dy - ey) < agreement);
    if (!peak) return [];
    return { first: [x, y] as const, second: project(map, x + peak.dx, y + peak.dy) };
  });
}
