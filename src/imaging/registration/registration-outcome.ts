/** What is told of the best attempt: the alignment with its figures, or why there is none. */
import type { Homography } from '../conventions.ts';
import type { Plane16 } from '../plane.ts';
import { enlargeRadial } from '../radial.ts';
import type { Attempt } from './attempt.ts';
import type { RegistrationOutcome } from './estimate.ts';
import { invert } from './homography.ts';
import { layOf } from './lay.ts';
import { measurePolarity, type PolarityMeasure } from './polarity.ts';
import { residualMap } from './residual-map.ts';
import { gate } from './tile-check.ts';
import { warpPlane } from './warp-plane.ts';
import { toFiles, toWorking, type WorkingPair } from './working-pair.ts';

/** The alignment of an attempt that passed. */
export function describe(
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

/** Why there is no alignment, with the numbers of the best attempt. */
export function failure(best: Attempt | null): RegistrationOutcome {
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
