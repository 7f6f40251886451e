/**
 * Which way of foretelling a frame suits a plate, and how many planes it needs.
 *
 * The thin plate has no parameter to tune; leave-one-out only chooses what it interpolates, with
 * a preference for a power of the codes, and takes the hemispherical fit on plates that only
 * scatter, where it is clearly better. Letting it choose freely was tried and picks too smooth a
 * way: a left-out lamp doubles the spacing around it, and a lobe that is then missed by all ways
 * is missed most evenly by the smoothest. The margins were set on rendered plates (mirror, satin,
 * matte; 24 to 96 lamps).
 */
import { type Components, learnComponents } from './components.ts';
import {
  decibels,
  enclosedLamps,
  lampSpacing,
  leftOutError,
  nearestError,
} from './leave-one-out.ts';
import { type LampWeights, lampWeights } from './lamp-weights.ts';
import type { Direction } from './light-place.ts';
import { type LightSample, thinnedSample } from './light-sample.ts';
import { truncationCost } from './truncation.ts';
import type { Estimate } from '../plane.ts';

export interface ChosenFit {
  readonly weights: LampWeights;
  readonly components: Components;
  readonly planes: number;
  /** Of frames foretold from the others, all components kept, dB in display codes. */
  readonly leftOutDecibels: number;
  readonly nearestDecibels: number;
  /** Of the frames put together from the kept planes. */
  readonly keptDecibels: number;
  readonly spacingDegrees: number;
  /** Whether lamps between the captured ones are worth showing. */
  readonly free: boolean;
}

/** Most planes; more cost bytes and gain less than 0.3 dB at 48 lamps. */
export const mostPlanes = 18;
/** A gain over the nearest frame, in dB, below which only captured lamps are offered. */
export const leastGain = 2;
/** By so many dB another way has to be better than the thin plate over a power of the codes. */
const preference = 1;
/** Leave-one-out error of a plate that only scatters, dB at least. */
const scatteringOnly = 40;
/** Truncation may add this share of the leave-one-out error, which itself is three times too large. */
const truncationShare = 0.02;
/** Fewer planes are taken where that costs less than this, in dB: the rest is noise. */
const noiseOnly = 0.05;

/** Pixels of the sample that leave-one-out looks at. */
const judgedPixels = 4000;

/** @param directions One for each lamp of the sample, in the same order. */
export function chooseFit(
  sample: LightSample,
  directions: readonly Direction[],
): Estimate<ChosenFit> {
  const plate = lampWeights('thin-plate', directions);
  if (!plate.ok) return plate;
  const enclosed = enclosedLamps(directions);
  if (enclosed.length === 0) {
    return { ok: false, reason: 'no lamp stands between others, so nothing can be foretold' };
  }
  const few = thinnedSample(sample, judgedPixels);
  const candidates = [
    { weights: plate.value, domain: 'power' as const, handicap: 0 },
    { weights: plate.value, domain: 'encoded' as const, handicap: preference },
    { weights: plate.value, domain: 'log' as const, handicap: preference },
  ].map((way) => {
    const error = leftOutError(few, way.weights, way.domain, enclosed);
    return { ...way, error, score: decibels(error) - way.handicap };
  });
  const smooth = lampWeights('hemispherical', directions);
  if (smooth.ok && directions.length > 2 * smooth.value.terms) {
    const error = leftOutError(few, smooth.value, 'encoded', enclosed);
    const found = decibels(error);
    const score = found >= scatteringOnly ? found - preference : -Infinity;
    candidates.push({
      ...{ weights: smooth.value, domain: 'encoded' as const, handicap: preference, error, score },
    });
  }
  const best = candidates.reduce((a, b) => (b.score > a.score ? b : a));
  const components = learnComponents(sample, best.domain, mostPlanes);
  const { planes, kept } = choosePlanes(few, components, best.weights, best.error, enclosed);
  const nearestDecibels = decibels(nearestError(few, directions, enclosed));
  const leftOutDecibels = decibels(best.error);
  return {
    ok: true,
    value: {
      ...{ weights: best.weights, components, planes, leftOutDecibels, nearestDecibels },
      keptDecibels: decibels(kept),
      spacingDegrees: lampSpacing(directions),
      free: leftOutDecibels - nearestDecibels >= leastGain,
    },
  };
}

/** A multiple of three, enough that truncation does not show beside what interpolation misses. */
function choosePlanes(
  sample: LightSample,
  components: Components,
  weights: LampWeights,
  leftOut: number,
  enclosed: readonly number[],
): { planes: number; kept: number } {
  const few = thinnedSample(sample, judgedPixels / 4);
  const most = Math.min(mostPlanes, components.variables);
  const all = truncationCost(few, components, weights, most, enclosed);
  const scatters = decibels(leftOut) >= scatteringOnly;
  for (let planes = 3; planes < most; planes += 3) {
    const { kept, leftOut: truncated } = truncationCost(few, components, weights, planes, enclosed);
    const hidden = kept <= truncationShare * leftOut;
    // On a plate that only scatters leave-one-out can be believed, and the rest is noise.
    const noise = scatters && decibels(all.leftOut) - decibels(truncated) < noiseOnly;
    if (hidden || noise) return { planes, kept };
  }
  return { planes: most, kept: all.kept };
}
