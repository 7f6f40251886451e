/**
 * The circle of a glossy ball from its highlights under lamps that are known: place = centre +
 * radius x offset is linear in centre and radius, so least squares need no start. A highlight
 * that is none (dust, another lamp, a reflection of the plate) is left out step by step.
 *
 * References
 * - Rousseeuw, P. J. and Croux, C. (1993). Alternatives to the median absolute deviation.
 *   J. Am. Stat. Assoc. 88, 1273-1283. doi:10.1080/01621459.1993.10476408 (1.4826 x MAD)
 */
import type { Estimate } from '../plane.ts';
import type { Circle } from './ball-highlight.ts';
import type { Offset } from './half-vector.ts';

export interface SeenHighlight {
  readonly x: number;
  readonly y: number;
  readonly offset: Offset;
}

export interface FittedBall extends Circle {
  /** Root mean square distance of the highlights used from where the circle puts them, pixels. */
  readonly residual: number;
  /** Highlights that were used. */
  readonly used: number;
}

/** Three unknowns, two numbers a highlight: four leave as many over to tell a wrong one by. */
export const fewestHighlights = 4;
/** Farther out than this many standard deviations is no highlight. Common practice, no source. */
const farthest = 3;
/** Nobody finds a highlight better than this, so nothing nearer is thrown out, pixels. */
const finest = 0.3;

export function ballFit(seen: readonly SeenHighlight[]): Estimate<FittedBall> {
  let used = seen;
  for (;;) {
    if (used.length < fewestHighlights) {
      return {
        ok: false,
        reason: `${used.length} highlights agree; ${fewestHighlights} are needed`,
      };
    }
    const circle = leastSquares(used);
    if (!circle) return { ok: false, reason: 'the lamps stand too close together' };
    const misses = used.map((spot) => miss(circle, spot));
    const middle = [...misses].sort((a, b) => a - b)[misses.length >> 1];
    // A distance in the plane: its median is 1.1774 standard deviations of one axis (Rayleigh).
    const limit = farthest * Math.max(finest, (1.4826 * middle) / 1.1774);
    const kept = used.filter((_, i) => misses[i] <= limit);
    if (kept.length === used.length) {
      const square = misses.reduce((sum, m) => sum + m * m, 0) / misses.length;
      return { ok: true, value: { ...circle, residual: Math.sqrt(square), used: used.length } };
    }
    used = kept;
  }
}

/** Pixels between a highlight and where the circle puts it. */
function miss({ x, y, radius }: Circle, spot: SeenHighlight): number {
  return Math.hypot(spot.x - x - radius * spot.offset[0], spot.y - y - radius * spot.offset[1]);
}

function leastSquares(seen: readonly SeenHighlight[]): Circle | null {
  const mean = (of: (spot: SeenHighlight) => number): number =>
    seen.reduce((sum, spot) => sum + of(spot), 0) / seen.length;
  const [x, y] = [mean((s) => s.x), mean((s) => s.y)];
  const [u, v] = [mean((s) => s.offset[0]), mean((s) => s.offset[1])];
  let [across, along] = [0, 0];
  for (const { x: px, y: py, offset } of seen) {
    across += (offset[0] - u) * (px - x) + (offset[1] - v) * (py - y);
    along += (offset[0] - u) ** 2 + (offset[1] - v) ** 2;
  }
  const radius = across / along;
  // Lamps within some 5 degrees of one another say nothing of the radius.
  if (!(along / seen.length > 0.002) || !(radius > 0)) return null;
  return { x: x - radius * u, y: y - radius * v, radius };
}
