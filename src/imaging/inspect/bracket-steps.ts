/**
 * Whether a bracket's exposure steps are the ones that were written down. Shutters are marked
 * in rounded figures (1/60 for 1/64, 1/15 for 1/16, 30 for 32), so a marked time stands for
 * the exact member of its series as well as for itself.
 *
 * References
 * - The exact series is 2^(n/3) seconds; that marked figures are these, rounded, is common
 *   practice, no source. ISO 12232 and ISO 2720 use the same preferred series.
 */

/** Steps of the exact series to one stop. */
const stepsPerStop = 3;

/** The member of the exact third-stop series nearest to a marked time, seconds. */
export function exactShutterTime(seconds: number): number {
  return 2 ** (Math.round(Math.log2(seconds) * stepsPerStop) / stepsPerStop);
}

/** Stops from one time to another: positive when the second is longer. */
export function stopsBetween(first: number, second: number): number {
  return Math.log2(second / first);
}

/** Whether two times are the same: within a tolerance in stops, or the same member of the series. */
export function isSameExposure(first: number, second: number, toleranceStops: number): boolean {
  if (Math.abs(stopsBetween(first, second)) <= toleranceStops) return true;
  return exactShutterTime(first) === exactShutterTime(second);
}

/**
 * Stops between two pictures of the same scene, from pixels that both hold well: the median
 * ratio of linear light. NaN when fewer than `fewest` pixels are held by both.
 */
export function measuredStops(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
  white = 65535,
  fewest = 400,
): number {
  const ratios: number[] = [];
  for (let i = 0; i < first.length; i += 1) {
    const [a, b] = [first[i], second[i]];
    // Below 1 % the black level and noise speak, above 80 % the shoulder of a tone curve.
    if (a < 0.01 * white || b < 0.01 * white || a > 0.8 * white || b > 0.8 * white) continue;
    ratios.push(b / a);
  }
  if (ratios.length < fewest) return NaN;
  ratios.sort((p, q) => p - q);
  return Math.log2(ratios[ratios.length >> 1]);
}
