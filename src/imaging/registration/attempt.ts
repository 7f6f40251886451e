/**
 * One attempt at an alignment: the last digits of a map that is nearly right, and what the tiles
 * say of it.
 */
import type { Homography } from '../conventions.ts';
import type { Radial } from '../radial.ts';
import type { Method } from './estimate.ts';
import { asksForRadial, radialEvidence, type RadialEvidence } from './lens-change.ts';
import type { KnownTiles } from './pair-tiles.ts';
import { checkFull, checkWorking, gate, passes, type TileCheck } from './tile-check.ts';
import { refineBentOnFull, refineOnFull, refineOnWorking } from './tile-refine.ts';
import { toCommon, type WorkingPair } from './working-pair.ts';

export interface Attempt {
  readonly pair: WorkingPair;
  /** From base to moving, common pixels. */
  readonly toMoving: Homography;
  readonly check: TileCheck;
  readonly method: Method;
  /** Done to a pixel of the base before `toMoving`, common pixels. */
  readonly radial: Radial | null;
  readonly lens: RadialEvidence | null;
}

/** The last digits and the gate, at full size where that is larger and has the detail. */
export function finish(pair: WorkingPair, working: Homography, method: Method): Attempt {
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

/** The one that passes, or the one that more tiles agree with. */
export function better(a: Attempt | null, b: Attempt | null): Attempt | null {
  if (!a || !b) return a ?? b;
  if (passes(a.check) !== passes(b.check)) return passes(a.check) ? a : b;
  const share = (c: TileCheck) => c.agreed / Math.max(1, c.tried);
  return share(b.check) > share(a.check) ? b : a;
}
