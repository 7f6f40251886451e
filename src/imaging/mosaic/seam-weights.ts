/**
 * How much of each tile a row of the mosaic takes: 1 inside of a tile's part, 0 beyond, and a
 * straight ramp across each seam, so that the shares of all tiles add up to 1.
 */
import { corners } from '../registration/homography.ts';
import { project, type Homography } from '../conventions.ts';
import type { MosaicPlan } from './plan.ts';

/** Position of a seam at a pixel of the line that it runs along, pixels. */
export function seamAt(seam: readonly number[], pixel: number, cell: number): number {
  return between(seam, pixel, cell) * cell - 0.5;
}

/** What is given for each cell along a line, at a pixel. */
function between(values: readonly number[], pixel: number, cell: number): number {
  const u = Math.max(0, Math.min(values.length - 1, (pixel + 0.5) / cell - 0.5));
  const i = Math.min(Math.max(0, values.length - 2), Math.floor(u));
  const next = values[Math.min(values.length - 1, i + 1)];
  return values[i] + (u - i) * (next - values[i]);
}

/** Gain that a level asks for on one side of its seam, fading out with the distance from it. */
export function levelGain(level: number, distance: number, reach: number): number {
  const away = Math.abs(distance);
  return level === 0 || away >= reach ? 1 : Math.exp((level / 2) * (1 - away / reach));
}

/** Share of what lies after a seam, at a signed distance from it. */
export function shareAfter(distance: number, feather: number): number {
  const t = 0.5 + distance / (2 * feather);
  return t <= 0 ? 0 : t >= 1 ? 1 : t;
}

/**
 * Shares of a band in row `y`, and the gains of its seams with the bands above and below, one
 * for each column of the mosaic; false where all shares are 0.
 */
export function bandShares(
  plan: MosaicPlan,
  band: number,
  y: number,
  shares: Float32Array,
  gains: Float32Array,
): boolean {
  const { cell, feather, levelReach, betweenLevels } = plan;
  const upper = plan.between[band - 1] as readonly number[] | undefined;
  const lower = plan.between[band] as readonly number[] | undefined;
  let any = false;
  for (let x = 0; x < shares.length; x += 1) {
    let share = 1;
    let gain = 1;
    if (upper) {
      const away = y - seamAt(upper, x, cell);
      share = shareAfter(away, feather);
      if (share > 0 && away < levelReach) {
        gain = levelGain(-between(betweenLevels[band - 1], x, cell), away, levelReach);
      }
    }
    if (lower && share > 0) {
      const away = seamAt(lower, x, cell) - y;
      share *= shareAfter(away, feather);
      if (share > 0 && away < levelReach) {
        gain *= levelGain(between(betweenLevels[band], x, cell), away, levelReach);
      }
    }
    shares[x] = share;
    gains[x] = gain;
    if (share > 0) any = true;
  }
  return any;
}

export interface Span {
  readonly from: number;
  /** Behind the last. */
  readonly to: number;
}

/** Columns in which the `k`-th tile of a band has a share in row `y`, its seams and levels there. */
export function tileSpan(plan: MosaicPlan, band: number, k: number, y: number) {
  const { seams, levels } = plan.bands[band];
  const hasRight = k < seams.length;
  const left = k > 0 ? seamAt(seams[k - 1], y, plan.cell) : -Infinity;
  const right = hasRight ? seamAt(seams[k], y, plan.cell) : Infinity;
  const from = Math.max(0, Math.ceil(left - plan.feather));
  const to = Math.min(plan.width, Math.floor(right + plan.feather) + 1);
  const leftLevel = k > 0 ? -between(levels[k - 1], y, plan.cell) : 0;
  const rightLevel = hasRight ? between(levels[k], y, plan.cell) : 0;
  return { from, to, left, right, leftLevel, rightLevel };
}

/** Columns of row `y` that a tile covers, by the corners of its outermost samples. */
export function coveredSpan(
  map: Homography,
  width: number,
  height: number,
  y: number,
  limit: number,
): Span {
  const quad = corners(width, height).map(([px, py]) => project(map, px, py));
  let [from, to] = [Infinity, -Infinity];
  quad.forEach(([ax, ay], i) => {
    const [bx, by] = quad[(i + 1) % 4];
    if (Math.min(ay, by) > y || Math.max(ay, by) < y) return;
    const t = by === ay ? 0 : (y - ay) / (by - ay);
    for (const x of by === ay ? [ax, bx] : [ax + t * (bx - ax)]) {
      from = Math.min(from, x);
      to = Math.max(to, x);
    }
  });
  const first = Math.max(0, Math.ceil(from));
  return from > to
    ? { from: 0, to: 0 }
    : { from: first, to: Math.max(first, Math.min(limit, Math.floor(to) + 1)) };
}
