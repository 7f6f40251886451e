/**
 * A window of the moving capture drawn over the same window of the base, at full detail.
 */
import { project, type Homography } from '../conventions.ts';
import { compose, corners, translation } from './homography.ts';
import type { MaskedPlane } from './masked-plane.ts';
import { warpPlane } from './warp-plane.ts';
import { cutWindow, type WorkingPair } from './working-pair.ts';

/** Samples kept around the drawn window for interpolation, pixels. */
const margin = 4;
/** A map that spreads a window over more than this many times its area is not a plate's. */
const mostSpread = 6;

/**
 * The moving capture drawn over a window of the base.
 *
 * @param toMoving From base to moving, common pixels.
 * @returns Null when the window does not lie on the moving capture.
 */
export function drawnWindow(
  pair: WorkingPair,
  toMoving: Homography,
  left: number,
  top: number,
  width: number,
  height: number,
): MaskedPlane | null {
  const points = corners(width, height).map(([x, y]) => project(toMoving, left + x, top + y));
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  const x0 = Math.floor(Math.min(...xs)) - margin;
  const y0 = Math.floor(Math.min(...ys)) - margin;
  const w = Math.ceil(Math.max(...xs)) + margin + 1 - x0;
  const h = Math.ceil(Math.max(...ys)) + margin + 1 - y0;
  const { plane } = pair.moving;
  if (!(w * h < mostSpread * width * height)) return null;
  if (x0 + w < 0 || y0 + h < 0 || x0 > plane.width || y0 > plane.height) return null;
  const cut = cutWindow(pair, pair.moving, x0, y0, w, h);
  const local = compose(compose(translation(-x0, -y0), toMoving), translation(left, top));
  return warpPlane(cut, local, width, height, 'cubic');
}
