/** How well each frame is foretold from the others, over a sample of pixels, in display codes. */
import { lampHull } from './lamp-hull.ts';
import type { LampWeights } from './lamp-weights.ts';
import { degreesBetween, type Direction } from './light-place.ts';
import { type Domain, domainTable, fromDomain } from './light-domain.ts';
import type { LightSample } from './light-sample.ts';

/** Peak signal to noise ratio of 8-bit codes, dB. */
export function decibels(meanSquare: number): number {
  return 10 * Math.log10((255 * 255) / Math.max(meanSquare, 1e-6));
}

/**
 * The lamps that the others enclose. Only they are left out in turn: without a lamp of the
 * outside, its place would lie beyond the hull, where no reader can put the lamp and where a
 * thin plate goes astray.
 */
export function enclosedLamps(directions: readonly Direction[]): number[] {
  const outside = new Set(lampHull(directions));
  return directions.map((_, i) => i).filter((i) => !outside.has(i));
}

/**
 * Errors of many frames as one mean square: the geometric mean, so that decibels are averaged. A
 * lamp that the mirror throws straight into the lens is foretold by nobody, and in a plain mean
 * its frame alone would decide.
 */
export function typicalError(sums: ArrayLike<number>, samples: number): number {
  let logs = 0;
  for (let i = 0; i < sums.length; i += 1) logs += Math.log(Math.max(sums[i] / samples, 1e-6));
  return Math.exp(logs / sums.length);
}

/** Typical mean square error of the `judged` frames left out in turn, display codes squared. */
export function leftOutError(
  sample: LightSample,
  weights: LampWeights,
  domain: Domain,
  judged: readonly number[],
): number {
  const { lamps, pixels, codes } = sample;
  const table = domainTable(domain);
  const rows = judged.map((i) => {
    const pivot = weights.residual[i * lamps + i];
    return Float64Array.from({ length: lamps }, (_, j) => weights.residual[i * lamps + j] / pivot);
  });
  const values = new Float64Array(lamps);
  const sums = new Float64Array(judged.length);
  for (let p = 0; p < pixels; p += 1) {
    for (let c = 0; c < 3; c += 1) {
      const at = p * lamps * 3 + c;
      for (let l = 0; l < lamps; l += 1) values[l] = table[codes[at + 3 * l]];
      for (let n = 0; n < judged.length; n += 1) {
        const i = judged[n];
        const row = rows[n];
        let foretold = values[i];
        for (let j = 0; j < lamps; j += 1) foretold -= row[j] * values[j];
        const error = fromDomain(domain, foretold) - codes[at + 3 * i];
        sums[n] += error * error;
      }
    }
  }
  return typicalError(sums, pixels * 3);
}

/** The same when the frame of the nearest other lamp stands in for the one left out. */
export function nearestError(
  sample: LightSample,
  directions: readonly Direction[],
  judged: readonly number[],
): number {
  const { lamps, pixels, codes } = sample;
  const nearest = directions.map((_, i) => nearestOther(directions, i));
  const sums = new Float64Array(judged.length);
  for (let p = 0; p < pixels; p += 1) {
    const at = p * lamps * 3;
    for (let n = 0; n < judged.length; n += 1) {
      const i = judged[n];
      for (let c = 0; c < 3; c += 1) {
        const error = codes[at + nearest[i] * 3 + c] - codes[at + i * 3 + c];
        sums[n] += error * error;
      }
    }
  }
  return typicalError(sums, pixels * 3);
}

/** The lamp nearest to lamp i. */
export function nearestOther(directions: readonly Direction[], i: number): number {
  let best = i === 0 ? 1 : 0;
  for (let j = 0; j < directions.length; j += 1) {
    if (j === i) continue;
    const closer =
      degreesBetween(directions[j], directions[i]) <
      degreesBetween(directions[best], directions[i]);
    if (closer) best = j;
  }
  return best;
}

/** Median distance of a lamp to its nearest neighbour, degrees. */
export function lampSpacing(directions: readonly Direction[]): number {
  const distances = directions
    .map((direction, i) => degreesBetween(direction, directions[nearestOther(directions, i)]))
    .sort((a, b) => a - b);
  const middle = distances.length >> 1;
  return distances.length % 2 ? distances[middle] : (distances[middle - 1] + distances[middle]) / 2;
}
