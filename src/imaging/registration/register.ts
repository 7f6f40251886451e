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
import { enlargeRadial, type Radial } from '../radial.ts';
import { homographyFromPoints, type ControlPoint } from './control-points.ts';
import type { Method, RegistrationOutcome } from './estimate.ts';
import { completeSearch, quickSearch, sharpenGuess, weakStarts } from './first-guess.ts';
import { invert, rescale } from './homography.ts';
import { layOf } from './lay.ts';
import { asksForRadial, radialEvidence, type RadialEvidence } from './lens-change.ts';
import type { KnownTiles } from './pair-tiles.ts';
import { measurePolarity, type PolarityMeasure } from './polarity.ts';
import { refineThroughPyramid } from './pyramid-refine.ts';
import { residualMap } from './residual-map.ts';
import { checkFull, checkWorking, gate, passes, type TileCheck } from './tile-check.ts';
import { refineBentOnFull, refineOnFull, refineOnWorking } from './tile-refine.ts';
import { warpPlane } from './warp-plane.ts';
import { gatherAtFullSize, gatherAtHalfSize, type WeakResult } from './weak-pair.ts';
import {
  fromFiles,
  prepareWorkingPair,
  toCommon,
  toFiles,
  toWorking,
  type WorkingPair,
} from './working-pair.ts';

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

interface Attempt {
  readonly pair: WorkingPair;
  /** From base to moving, common pixels. */
  readonly toMoving: Homography;
  readonly check: TileCheck;
  readonly method: Method;
  /** Done to a pixel of the base before `toMoving`, common pixels. */
  readonly radial: Radial | null;
  readonly lens: RadialEvidence | null;
}

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

/** The last digits and the gate, at full size where that is larger and has the detail. */
function finish(pair: WorkingPair, working: Homography, method: Method): Attempt {
  const known: KnownTiles = new Map();
  if (pair.factor > 1) {
    const toMoving = refineOnFull(pair, toCommon(working, pair), known);
    const check = checkFull(pair, toMoving, known);
    const attempt = straightened(pair, attemptOf(pair, toMoving, check, method), known);
    if (passes(attempt.check)) return attempt;
  }
  const refined = refineOnWorking(pair, working);
  const check = checkWorking(pair, refined);
  return straightened(pair, attemptOf(pair, toCommon(refined, pair), check, method), known);
}

function attemptOf(
  pair: WorkingPair,
  toMoving: Homography,
  check: TileCheck,
  method: Method,
): Attempt {
  const { plane, pitch } = pair.base;
  const lens = radialEvidence(check.tiles, plane.width * pitch, plane.height * pitch);
  return { pair, toMoving, check, method, radial: null, lens };
}

/** A radial term lowers the predicted corner deviation to this share, or it is not wanted. */
const worthIt = 0.75;

/**
 * With a radial term, where the tiles ask for one and the check is then clearly better: the
 * gate passed, no fewer tiles agreeing, and less deviation though one parameter more is fitted.
 */
function straightened(pair: WorkingPair, attempt: Attempt, known: KnownTiles): Attempt {
  const { check, lens } = attempt;
  if (!asksForRadial(lens) || check.leastPerQuadrant < gate.leastPerQuadrant) return attempt;
  const bent = refineBentOnFull(pair, attempt.toMoving, known);
  if (!bent) return attempt;
  const straight = checkFull(pair, bent.toMoving, known, bent.radial);
  const share = (c: TileCheck) => c.agreed / Math.max(1, c.tried);
  const better =
    passes(straight) &&
    share(straight) >= 0.95 * share(check) &&
    straight.cornerDeviation <= worthIt * check.cornerDeviation;
  return better ? { ...attempt, ...bent, check: straight } : attempt;
}

function better(a: Attempt | null, b: Attempt | null): Attempt | null {
  if (!a || !b) return a ?? b;
  if (passes(a.check) !== passes(b.check)) return passes(a.check) ? a : b;
  const share = (c: TileCheck) => c.agreed / Math.max(1, c.tried);
  return share(b.check) > share(a.check) ? b : a;
}

function describe(
  { pair, toMoving, check, method, radial, lens }: Attempt,
  base: Plane16,
  pixelsPerMillimetre: number | null,
) {
  const map = toFiles(toMoving, pair);
  const tones = comparedTones(pair, toMoving);
  const boundPixels = 2 * check.cornerDeviation;
  return {
    homography: invert(map),
    radial: radial && enlargeRadial(radial, pair.base.pitch),
    lens,
    lay: layOf(map),
    polarity: tones.polarity,
    tones,
    boundPixels,
    boundMicrometres: pixelsPerMillimetre ? (1000 * boundPixels) / pixelsPerMillimetre : null,
    method,
    tilesAgreed: check.agreed,
    tilesTried: check.tried,
    leastPerQuadrant: check.leastPerQuadrant,
    tiles: check.tiles,
    residual: residualMap(check.tiles, base),
  };
}

function comparedTones(pair: WorkingPair, toMoving: Homography): PolarityMeasure {
  const still = pair.base.levels[0];
  const map = toWorking(toMoving, pair);
  const drawn = warpPlane(pair.moving.levels[0], map, still.width, still.height, 'linear');
  return measurePolarity(still, drawn);
}

function failure(best: Attempt | null): RegistrationOutcome {
  if (!best) {
    const reason = 'No alignment was found: the captures have too little detail in common.';
    return { ok: false, reason, check: null };
  }
  const { tried, agreed, leastPerQuadrant, cornerDeviation } = best.check;
  const needed = Math.ceil(gate.leastShare * tried);
  const deviation = Number.isFinite(cornerDeviation)
    ? `a predicted corner deviation of ${cornerDeviation.toFixed(2)} px`
    : 'too few to predict a deviation';
  const reason =
    `${agreed} of ${tried} tiles agree, ${leastPerQuadrant} in the weakest quadrant, with ` +
    `${deviation}; an alignment needs ${needed} tiles, ${gate.leastPerQuadrant} in each ` +
    `quadrant and at most ${gate.mostCornerDeviation.toFixed(2)} px.`;
  const check = { tilesAgreed: agreed, tilesTried: tried, leastPerQuadrant, cornerDeviation };
  return { ok: false, reason, check };
}
