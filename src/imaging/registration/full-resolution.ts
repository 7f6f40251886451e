/**
 * The last digits: windows of the full-size captures correct what the working copies found.
 */
import { project, type Homography } from '../conventions.ts';
import { fullWindow } from './full-window.ts';
import { gradientField } from './gradient-field.ts';
import { compose, normalise } from './homography.ts';
import { fitIncrement, freely, type Measured } from './tile-fit.ts';
import { tilePlaces } from './tile-shifts.ts';
import { windowShift } from './window-shift.ts';
import type { WorkingPair } from './working-pair.ts';

/** Side of a window, pixels, and how many there are at most along the longer and shorter side. */
const side = 256;
const most = { along: 12, across: 9 };
/** Smoothing before the gradient and of the field, pixels. */
const sigma = 1.2;
const fieldSigma = 1.5;
const passes = 2;
/** Median shift of the windows, pixels, below which a second pass is not needed. */
const settled = 0.4;
/** Fewer windows than this fix no homography worth having. */
const leastWindows = 12;

/**
 * @param start From base to moving, common pixels.
 * @returns The corrected map, or the start where the windows say too little.
 */
export function refineAtFullResolution(pair: WorkingPair, start: Homography): Homography {
  const { width, height } = pair.base.plane;
  let map = start;
  for (let pass = 0; pass < passes; pass += 1) {
    const points = windowPlaces(width, height, side, most).flatMap(([x, y]) =>
      measureWindow(pair, map, x, y),
    );
    if (points.length < leastWindows) return map;
    const step = fitRobustly(points, width, height);
    if (!step) return map;
    map = normalise(compose(map, step));
    // Windows that lay nearly on each other would find the same again.
    const lengths = points.map((p) => Math.hypot(p.dx, p.dy)).sort((a, b) => a - b);
    if (lengths[lengths.length >> 1] < settled) break;
  }
  return map;
}

/** Top-left corners of windows spread evenly over a picture, not more than `limit` of them. */
export function windowPlaces(
  width: number,
  height: number,
  length: number,
  limit: { readonly along: number; readonly across: number },
): readonly (readonly [x: number, y: number])[] {
  const wide = width >= height;
  const xs = places(width, length, wide ? limit.along : limit.across);
  const ys = places(height, length, wide ? limit.across : limit.along);
  return ys.flatMap((y) => xs.map((x) => [x, y] as const));
}

function places(extent: number, length: number, limit: number): readonly number[] {
  return tilePlaces(extent, length, Math.max(length * 0.75, (extent - length) / (limit - 1)));
}

function measureWindow(
  pair: WorkingPair,
  map: Homography,
  left: number,
  top: number,
): readonly Measured[] {
  const window = fullWindow(pair, map, left, top, side, side);
  if (!window) return [];
  const still = gradientField(window.still, sigma, fieldSigma);
  const drawn = gradientField(window.drawn, sigma, fieldSigma);
  const shift = windowShift(still, drawn);
  if (!shift) return [];
  const centre = (side - 1) / 2;
  return [{ x: left + centre, y: top + centre, dx: shift.dx, dy: shift.dy, weight: 1 }];
}

/** Biweight fit: a window more than four deviations off has no say. */
function fitRobustly(points: readonly Measured[], width: number, height: number) {
  let weighted = points;
  let map: Homography | null = null;
  for (let round = 0; round < 6; round += 1) {
    map = fitIncrement(weighted, width, height, freely);
    if (!map) return null;
    const misses = missesOf(points, map);
    const median = misses.toSorted((a, b) => a - b)[misses.length >> 1];
    const limit = 4 * Math.max(0.05, 1.4826 * median);
    weighted = points.map((p, i) => ({
      ...p,
      weight: misses[i] < limit ? (1 - (misses[i] / limit) ** 2) ** 2 : 0,
    }));
  }
  return map;
}

function missesOf(points: readonly Measured[], map: Homography): readonly number[] {
  return points.map(({ x, y, dx, dy }) => {
    const [px, py] = project(map, x, y);
    return Math.hypot(px - x - dx, py - y - dy);
  });
}
