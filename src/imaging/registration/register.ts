/**
 * Bring one capture of a plate onto another, whatever the light did to its tones.
 *
 * A positive and a negative of one plate have opposite tones, clipped glare in different places
 * and scratches that only one of them shows; the file may be mirrored or upside down. The stages:
 *
 * 1. `first-guess.ts`: lay, rotation, size and shift by phase correlation of small pictures;
 * 2. `pyramid-refine.ts`: Gauss-Newton on the double-angle gradient field (the fast method);
 * 3. `tile-refine.ts`: many small tiles correct it, at full size where that is larger;
 * 4. `tile-check.ts`: the gate. Only what passes it is an alignment;
 * 5. `lens-change.ts`: a radial term, only where the tiles ask for one;
 * 6. `weak-pair.ts`: what fails is tried again by the agreement of many tiles, and checked again.
 *
 * Memory: the two captures, and about 60 bytes per pixel of working copies of at most 1500 pixels.
 */
import type { Homography } from '../conventions.ts';
import type { Plane16 } from '../plane.ts';
import { better, finish, type Attempt } from './attempt.ts';
import { homographyFromPoints, type ControlPoint } from './control-points.ts';
import type { Method, RegistrationOutcome } from './estimate.ts';
import { completeSearch, quickSearch, sharpenGuess, weakStarts } from './first-guess.ts';
import { rescale } from './homography.ts';
import { refineThroughPyramid } from './pyramid-refine.ts';
import { describe, failure } from './registration-outcome.ts';
import { passes } from './tile-check.ts';
import { gatherAtFullSize, gatherAtHalfSize, type WeakResult } from './weak-pair.ts';
import { fromFiles, prepareWorkingPair, toWorking, type WorkingPair } from './working-pair.ts';

export interface RegisterOptions {
  /** At least four points marked in both; a start only, the result is checked like any other. */
  readonly controlPoints?: readonly ControlPoint[] | undefined;
  /** Scale of the base, for the bound in micrometres. */
  readonly pixelsPerMillimetre?: number | null | undefined;
}

/** A shorter side than this has too few tiles for the gate, pixels. */
const leastSide = 320;

/** Starts with less than this share of the best one's votes at half size are dropped. */
const stillInTheRace = 0.7;

/** A search whose best peak is lower, in standard deviations, has found nothing to start from. */
const leastPeak = 4;

/**
 * @param base Linear luminance of the capture that defines the frame.
 * @param moving Linear luminance of the other one; its size may differ.
 */
export function register(
  base: Plane16,
  moving: Plane16,
  options: RegisterOptions = {},
): RegistrationOutcome {
  for (const [name, plane] of [
    ['base', base],
    ['capture', moving],
  ] as const) {
    if (Math.min(plane.width, plane.height) < leastSide) {
      const reason =
        `The ${name} is ${plane.width} x ${plane.height} pixels; alignment needs at least ` +
        `${leastSide} on the shorter side.`;
      return { ok: false, reason, check: null };
    }
  }
  const start = options.controlPoints ? homographyFromPoints(options.controlPoints) : null;
  if (options.controlPoints && !start) {
    const reason =
      'The control points do not fix a map: at least four are needed, no three of them on a line.';
    return { ok: false, reason, check: null };
  }
  const best = start ? fromControlPoints(base, moving, start) : search(base, moving);
  if (!best || !passes(best.check)) return failure(best);
  return { ok: true, value: describe(best, base, options.pixelsPerMillimetre ?? null) };
}

/**
 * Pixels of the moving file per pixel of the base that show the same detail. A file of the same
 * shape and another size has probably been resampled; it may also be a crop at the same size.
 */
function sizeRatios(base: Plane16, moving: Plane16): readonly number[] {
  const across = moving.width / base.width;
  const down = moving.height / base.height;
  const sameShape = Math.abs(across / down - 1) < 0.02;
  const otherSize = Math.abs(across - 1) > 0.01;
  return sameShape && otherSize ? [Math.sqrt(across * down), 1] : [1];
}

function search(base: Plane16, moving: Plane16): Attempt | null {
  let best: Attempt | null = null;
  for (const ratio of sizeRatios(base, moving)) {
    best = better(best, attemptAt(base, moving, ratio));
    if (best && passes(best.check)) break;
  }
  return best;
}

function attemptAt(base: Plane16, moving: Plane16, ratio: number): Attempt | null {
  const pair = prepareWorkingPair(base, moving, ratio);
  const quick = quickSearch(pair);
  const guess = sharpenGuess(pair, quick);
  const fast = fastAttempt(pair, guess.toMoving, pair.base.levels.length - 1, 'fast');
  if (fast && passes(fast.check)) return fast;
  const complete = completeSearch(pair);
  if (complete[0].z < leastPeak) return fast;
  return better(fast, weakAttempt(pair, weakStarts(pair, complete), 'weak'));
}

/** @param start From base to moving, pixels of the files. */
function fromControlPoints(base: Plane16, moving: Plane16, start: Homography): Attempt | null {
  // The points tell the ratio of sizes themselves.
  const ratio = Math.sqrt(Math.abs(start[0] * start[4] - start[1] * start[3]));
  const pair = prepareWorkingPair(base, moving, Math.abs(ratio - 1) > 0.05 ? ratio : 1);
  const working = toWorking(fromFiles(start, pair), pair);
  const level = Math.min(1, pair.base.levels.length - 1);
  const fast = fastAttempt(pair, rescale(working, 1 / 2 ** level), level, 'control points');
  if (fast && passes(fast.check)) return fast;
  return better(fast, weakAttempt(pair, [working], 'control points'));
}

/** @param start From base to moving, pixels of the working copies at `level`. */
function fastAttempt(
  pair: WorkingPair,
  start: Homography,
  level: number,
  method: Method,
): Attempt | null {
  const free = method === 'control points';
  // Windows of the full-size captures find the last digits of a large pair, and find them sooner.
  const last = pair.factor > 1 && !free ? 1 : 0;
  const { base, moving } = pair;
  const refined = refineThroughPyramid(base.levels, moving.levels, start, level, free, last);
  return refined && finish(pair, refined, method);
}

/** @param starts From base to moving, pixels of the working copies, best first. */
function weakAttempt(
  pair: WorkingPair,
  starts: readonly Homography[],
  method: Method,
): Attempt | null {
  const gathered = starts
    .map((start) => gatherAtHalfSize(pair, start))
    .filter((r): r is WeakResult => r !== null)
    .sort((a, b) => b.votes - a.votes);
  let best: WeakResult | null = null;
  for (const result of gathered) {
    if (result.votes < stillInTheRace * gathered[0].votes) break;
    const full = gatherAtFullSize(pair, result);
    if (full && (!best || full.votes > best.votes)) best = full;
  }
  return best && finish(pair, best.toMoving, method);
}
