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
const sigma = 1;
const fieldSigma = 1.5;

/**
 * Steps at most, by place in the pyramid, and the movement in pixels that ends them. Few at the
 * largest: `tile-refine.ts` goes on from there.
 */
const steps = { smallest: 12, between: 6, largest: 2 };
const settled = { between: 0.03, largest: 0.006 };

/**
 * @param base Levels of the base, largest first; `moving` has as many.
 * @param start From base to moving in pixels of level `from`.
 * @param free Perspective may be strong: eight parameters at every level and no prior.
 * @param to Level of the last steps: 1 leaves the largest to who comes after.
 * @returns From base to moving in pixels of the largest level; null when a level has nothing to hold on to.
 */
export function refineThroughPyramid(
  base: readonly MaskedPlane[],
  moving: readonly MaskedPlane[],
  start: Homography,
  from: number,
  free = false,
  to: 0 | 1 = 0,
): Homography | null {
  // No level is the smallest, the one that gets only four parameters, when all eight are wanted.
  const smallest = free ? Infinity : base.length - 1;
  let map: Homography | null = start;
  const last = Math.min(from, to);
  for (let level = from; level >= last && map; level -= 1) {
    if (level < from) map = rescale(map, 2);
    map = refineAtLevel(base[level], moving[level], map, level, smallest);
  }
  return map && rescale(map, 2 ** last);
}

function refineAtLevel(
  base: MaskedPlane,
  moving: MaskedPlane,
  start: Homography,
  level: number,
  smallest: number,
): Homography | null {
  const still = gradientField(base, sigma, fieldSigma);
  const most = level === 0 ? steps.largest : level === smallest ? steps.smallest : steps.between;
  let map = start;
  for (let k = 0; k < most; k += 1) {
    const drawn = warpPlane(moving, map, base.width, base.height, level === 0 ? 'cubic' : 'linear');
    const field = gradientField(drawn, sigma, fieldSigma);
    // At full size the data speak for themselves: the prior would pull a true perspective flat.
    const free = smallest === Infinity;
    const prior = free || (level === 0 && k > 0) ? null : map;
    const freedom = free ? 8 : freedomAt(level, smallest, k);
    const step = gaussNewtonStep(still, field, freedom, prior);
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
