/**
 * From a first guess to a fraction of a pixel: Gauss-Newton steps from the smallest picture to
 * the largest, the capture drawn anew and its field computed anew before every step.
 */
import type { Homography } from '../conventions.ts';
import { gaussNewtonStep, type Freedom } from './gauss-newton-step.ts';
import { gradientField } from './gradient-field.ts';
import { compose, cornerDistance, invert, normalise, rescale } from './homography.ts';
import type { MaskedPlane } from './masked-plane.ts';
import { warpPlane } from './warp-plane.ts';

/** Smoothing before the gradient and of the field, pixels. */
export interface Smoothing {
  readonly sigma: number;
  readonly fieldSigma: number;
}

/** For captures with detail down to the pixel. */
export const fineSmoothing: Smoothing = { sigma: 1, fieldSigma: 1.5 };

/** For soft or noisy ones, whose finest detail is noise. */
export const softSmoothing: Smoothing = { sigma: 1.6, fieldSigma: 1.5 };

/** Steps at most, by place in the pyramid, and the movement in pixels that ends them. */
const steps = { smallest: 12, between: 6, largest: 8 };
const settled = { between: 0.03, largest: 0.006 };

/**
 * @param base Levels of the base, largest first; `moving` has as many.
 * @param start From base to moving in pixels of level `from`.
 * @param to The last level worked on, 0 for the largest.
 * @returns From base to moving in pixels of level `to`; null when a level has nothing to hold on to.
 */
export function refineThroughPyramid(
  base: readonly MaskedPlane[],
  moving: readonly MaskedPlane[],
  start: Homography,
  from: number,
  to = 0,
): Homography | null {
  let map: Homography | null = start;
  for (let level = from; level >= to && map; level -= 1) {
    if (level < from) map = rescale(map, 2);
    map = refineAtLevel(base[level], moving[level], map, level, base.length - 1, fineSmoothing);
  }
  return map;
}

export function refineAtLevel(
  base: MaskedPlane,
  moving: MaskedPlane,
  start: Homography,
  level: number,
  smallest: number,
  { sigma, fieldSigma }: Smoothing,
): Homography | null {
  const still = gradientField(base, sigma, fieldSigma);
  const most = level === 0 ? steps.largest : level === smallest ? steps.smallest : steps.between;
  let map = start;
  for (let k = 0; k < most; k += 1) {
    const drawn = warpPlane(moving, map, base.width, base.height, level === 0 ? 'cubic' : 'linear');
    const field = gradientField(drawn, sigma, fieldSigma);
    // At full size the data speak for themselves: the prior would pull a true perspective flat.
    const prior = level === 0 && k > 0 ? null : map;
    const step = gaussNewtonStep(still, field, freedomAt(level, smallest, k), prior);
    if (!step) return null;
    const next = normalise(compose(map, invert(step)));
    if (!next.every(Number.isFinite)) return null;
    const moved = cornerDistance(map, next, base.width, base.height);
    map = next;
    if (moved < (level === 0 ? settled.largest : settled.between)) break;
  }
  return map;
}

/** Few parameters while the picture is small, all eight once there is detail to hold them. */
function freedomAt(level: number, smallest: number, step: number): Freedom {
  if (level === 0) return 8;
  if (level === smallest) return 4;
  if (level >= 2) return 6;
  return step < 3 ? 6 : 8;
}
